using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Nudging;

/// <summary>What was decided for a member.</summary>
/// <param name="After">The member after, to be saved together with what is said; its version is one above the one it was read with.</param>
/// <param name="Say">What to say now, or null.</param>
/// <param name="Withheld">What is due and is not said now, with the reason.</param>
public sealed record Decision(Rider After, Nudge? Say, ImmutableArray<Withheld> Withheld)
{
    /// <summary>What is said, for the outbox. One message a day has one id, whoever decides it and however often.</summary>
    public ImmutableArray<OutboxMessage> Outbox() => Say is null
        ? []
        : [new OutboxMessage(
            IdOf(After.Member, After.LastDay!.Value, Say.Evening),
            new CaseId(PlaceOf(After.Member)), PlaceOf(After.Member), Say.Card, After.LastAt!.Value)];

    /// <summary>Names that the member's last message may have; none before the first.</summary>
    public static ImmutableArray<string> LastOf(Rider rider) =>
        rider.LastDay is { } day ? [IdOf(rider.Member, day, evening: false), IdOf(rider.Member, day, evening: true)] : [];

    /// <summary>The place of a member's reminders in the outbox: nobody's case is talked through there.</summary>
    public static string PlaceOf(MemberId member) => "nudge/" + member.Value;

    private static string IdOf(MemberId member, LocalDate day, bool evening) => $"{PlaceOf(member)}/{Dates.Iso(day)}{(evening ? "/evening" : "")}";
}

/// <summary>A message to be sent.</summary>
/// <param name="DueKeys">What it tells, named or counted, with what is coming up; empty when it asks whether to go on.</param>
/// <param name="Evening">True for the reminder that was asked for with "tonight".</param>
public sealed record Nudge(Card Card, ImmutableArray<string> DueKeys, bool Evening);

/// <param name="Why">The first reason that holds.</param>
public sealed record Withheld(string DueKey, WithheldFor Why);

/// <summary>Why something that is due is not said.</summary>
public enum WithheldFor
{
    /// <summary>The member has not said that they want to be reminded.</summary>
    NoConsent,

    /// <summary>They cannot be written to.</summary>
    Refused,

    /// <summary>They were asked whether to go on and have not done anything since.</summary>
    Silence,

    /// <summary>They want to hear no more of this task.</summary>
    Stopped,

    /// <summary>They are not riding.</summary>
    Resting,

    /// <summary>They were told.</summary>
    Told,

    /// <summary>They asked for it at a later time.</summary>
    Later,

    /// <summary>It does not press, and the last digest was a short while ago: it is told with what else falls due.</summary>
    Gathering,

    /// <summary>They had a message today already.</summary>
    SpokenToday,

    /// <summary>It is not yet their time of day.</summary>
    NotYet,

    /// <summary>It is quiet.</summary>
    Quiet,

    /// <summary>Two digests went unanswered: they are asked whether to go on.</summary>
    AskingFirst,
}
