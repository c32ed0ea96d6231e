using System.Collections.Immutable;

namespace ShedBot.Coaching.Cases;

/// <summary>Where a case stands. Stored by name: never rename a member.</summary>
public enum CasePhase
{
    /// <summary>The trouble is not yet clear.</summary>
    Opening,

    /// <summary>A question or check is open.</summary>
    Asking,

    /// <summary>Waiting for the member to be at the bike and safe.</summary>
    Resting,

    /// <summary>A repair is being done.</summary>
    Repairing,

    /// <summary>The repair is done and is to be proved.</summary>
    Proving,

    /// <summary>Closed: the repair held.</summary>
    Solved,

    /// <summary>Closed: a human goes on.</summary>
    HandedOver,

    /// <summary>Closed: found or heard something that must not be ridden or coached.</summary>
    Stopped,

    /// <summary>Closed: the member left it.</summary>
    Left,
}

/// <summary>What the member was last asked.</summary>
public enum AskKind
{
    None,
    Trouble,
    WhichComplaint,
    Fact,
    Check,
    Ready,
    Repair,
    RepairStep,
    DidItHold,
    WhichAnswer,
    AllSafe,
    Either,
}

/// <summary>The open question.</summary>
/// <param name="Subject">The id of the check, fact, repair, emergency or question that tells apart; empty where the kind has none.</param>
/// <param name="Position">The step of a repair that is shown, from 0; else how often the question was put already.</param>
/// <param name="Serial">Tells this question from every other of the case, so that a late answer is noticed; from 1.</param>
public sealed record Ask(AskKind Kind, string Subject = "", int Position = 0, int Serial = 0)
{
    public static Ask Nothing { get; } = new(AskKind.None);
}

/// <summary>One trouble of one bike, talked through. Everything that is believed is worked out anew from the entries.</summary>
/// <param name="Place">Where it is talked through, as the platform names it: a thread, or the practice terminal.</param>
/// <param name="OpeningWords">The member's own words; empty until something was said.</param>
/// <param name="Turn">How many turns were taken, from 0.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
/// <param name="KnowledgeVersion">The version of the rules of the last turn.</param>
/// <param name="Handled">The events already answered, newest last, a bounded number: an event that comes twice is answered once.</param>
public sealed record Case(
    CaseId Id,
    MemberId Member,
    BikeId Bike,
    string Place,
    CasePhase Phase,
    string OpeningWords,
    ImmutableArray<CaseEntry> Entries,
    Ask Open,
    int Turn,
    int Version,
    string KnowledgeVersion,
    DateTimeOffset OpenedAt,
    DateTimeOffset LastTurnAt,
    DateTimeOffset? ClosedAt,
    ImmutableArray<string> Handled)
{
    public static Case New(CaseId id, MemberId member, BikeId bike, string place, DateTimeOffset now) => new(
        id, member, bike, place, CasePhase.Opening, "", [], Ask.Nothing, 0, 0, "", now, now, null, []);

    public bool IsClosed => Phase is CasePhase.Solved or CasePhase.HandedOver or CasePhase.Stopped or CasePhase.Left;

    /// <summary>The entries that count.</summary>
    public IEnumerable<CaseEntry> Standing => Entries.Where(e => !e.Struck);
}
