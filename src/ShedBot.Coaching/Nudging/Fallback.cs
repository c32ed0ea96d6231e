using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Nudging;

/// <summary>What is done when the platform does not let a message through to the member.</summary>
public static class Fallback
{
    private const string Mentioned = "/mention-";

    /// <summary>
    /// The platform refused a direct message. Once only: a mention in the place that the member chose, or, where they chose none or it is quiet, a note at
    /// their next command. No direct message is tried until they ask to be reminded again.
    /// </summary>
    /// <returns>The member after, and the mention to be made in <see cref="Rider.Place"/>, or null.</returns>
    public static (Rider After, Card? Mention) Refused(Rider rider, string clubZone, DateTimeOffset now)
    {
        if (rider.Refused) return (rider, null);
        var mention = rider.Place is not null && !new RiderClock(rider, clubZone, now).IsQuiet;
        return (rider with { Refused = true, Note = !mention, NextLook = null, Version = rider.Version + 1 }, mention ? NudgeCards.Mention : null);
    }

    /// <summary>
    /// The mention for the outbox, to be saved with the member. It waits in the place of their reminders; whoever delivers says it in
    /// <see cref="Rider.Place"/>, for a member who is refused gets nothing else.
    /// </summary>
    public static OutboxMessage Outbox(Rider after, Card mention, DateTimeOffset now)
    {
        var place = Decision.PlaceOf(after.Member);
        return new OutboxMessage(string.Create(CultureInfo.InvariantCulture, $"{place}{Mentioned}{after.Version}"), new CaseId(place), place, mention, now);
    }

    /// <summary>Whether what waits in the place of a member's reminders is the mention; everything else is for a direct message.</summary>
    public static bool IsMention(OutboxMessage message) => message.Id[message.Place.Length..].StartsWith(Mentioned, StringComparison.Ordinal);

    /// <summary>The mention could not be made either: a note at their next command takes its place.</summary>
    public static Rider NotMentioned(Rider rider) => rider with { Note = true, Version = rider.Version + 1 };

    /// <summary>The note that waits for the member's next command; it is shown once.</summary>
    public static (Rider After, Card? Note) AtNextCommand(Rider rider, string clubZone, DateTimeOffset now) => rider.Note
        ? (rider with { Note = false, Version = rider.Version + 1 }, NudgeCards.Note(new RiderClock(rider, clubZone, now).Today))
        : (rider, null);
}
