using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>A member's settings, for the member alone.</summary>
internal static class RiderCards
{
    public static Card Of(Rider rider, KnowledgeBase knowledge, string clubZone, DateTimeOffset at)
    {
        var clock = new RiderClock(rider, clubZone, at);
        var on = rider is { Consent: Consent.Given, Refused: false, Silent: false };
        var lines = ImmutableArray.CreateBuilder<string>();
        if (on) lines.Add($"around {Time(rider.Quiet.Outside(rider.Preferred))}, when something is due{Moved(rider)}; at most one a day of my own accord");
        lines.Add(rider.Quiet.From == rider.Quiet.Until ? "no quiet hours" : $"quiet from {Time(rider.Quiet.From)} to {Time(rider.Quiet.Until)}");
        lines.Add($"your clock: {clock.Zone.Id}{(rider.Zone is null ? " until you tell me yours" : "")}; it is {Time(Instant.FromDateTimeOffset(at).InZone(clock.Zone).TimeOfDay)} there");
        if (rider.Units is { } units) lines.Add(units == Units.Imperial ? "distances in miles" : "distances in kilometres");
        if (!rider.Stopped.IsEmpty) lines.Add($"not reminded of: {Say.Join([.. rider.Stopped.Select(t => knowledge.Service.GetValueOrDefault(t)?.Called ?? t)])}");
        if (rider.Later.Count(l => l.Until > at) is > 0 and var later) lines.Add($"put off for later: {later}");
        return new Card(
            Title(rider),
            [.. Why(rider), .. Say.List("So far", lines)],
            [on ? Answer(NudgeVerb.Decline, clock.Today, "Stop all reminders") : Answer(NudgeVerb.Agree, clock.Today, "Remind me")]);
    }

    private static string Moved(Rider rider) => rider.Quiet.Cover(rider.Preferred) ? $" ({Time(rider.Preferred)} is in your quiet hours)" : "";

    private static string Title(Rider rider) => rider switch
    {
        { Consent: not Consent.Given } => "Reminders are off",
        { Refused: true } => "Reminders don't reach you",
        { Silent: true } => "Reminders are resting",
        _ => "Reminders are on",
    };

    private static IEnumerable<CardBlock> Why(Rider rider) => rider switch
    {
        { Consent: Consent.Given, Refused: true } => [Say.Text("A direct message to you was refused, so I stopped. Allow them, and ask me to remind you again.")],
        { Consent: Consent.Given, Silent: true } => [Say.Text("My last messages went unanswered. Log a ride or ask me to remind you, and I go on.")],
        _ => [],
    };

    private static CardOption Answer(NudgeVerb verb, LocalDate today, string label) => new(new NudgeAnswer(verb, today).ToString(), label);

    private static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
