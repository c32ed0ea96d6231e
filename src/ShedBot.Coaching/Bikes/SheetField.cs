using System.Collections.Immutable;
using ShedBot.Coaching.Bikes.Kinds;

namespace ShedBot.Coaching.Bikes;

/// <summary>The parts of the bike sheet: what is filled in together.</summary>
public enum SheetPart
{
    EngineAndFuel,
    DriveAndWheel,
    Clutch,
}

/// <summary>One thing that can be known of a bike.</summary>
/// <param name="Id">By which the fact is kept; for what the rules know the id of the fact rule.</param>
/// <param name="Called">As in "bar length".</param>
/// <param name="Ask">The question that fills it.</param>
/// <param name="Find">Why it is asked, and how to find it out; for somebody who has never looked.</param>
/// <param name="Fresh">How long it can be relied on.</param>
/// <param name="Again">What to do when it is stale, as in "measure again".</param>
/// <param name="Names">What else riders call it, in small letters.</param>
public sealed record SheetField(
    string Id, SheetPart Part, string Called, string Ask, string Find, FieldKind Kind, Freshness Fresh, string Again, ImmutableArray<string> Names);

/// <summary>How long a fact can be relied on. Common practice, no source.</summary>
/// <param name="Days">After so many days it is stale; null: never by the calendar.</param>
/// <param name="RidingDays">After so many days ridden since it is stale; null: riding does not change it.</param>
public sealed record Freshness(int? Days, int? RidingDays)
{
    /// <summary>What does not change, or is told when it does.</summary>
    public static Freshness ForEver { get; } = new(null, null);
}
