using System.Collections.Immutable;
using ShedBot.Coaching.Bikes.Kinds;

namespace ShedBot.Coaching.Bikes;

/// <summary>A value for a field of the sheet, or null where it is not known any more.</summary>
public sealed record FactTold(string Field, string? Value);

/// <summary>How facts get on the sheet.</summary>
/// <remarks>
/// What the rider tells replaces whatever stands there. What the coach overhears fills a gap, and replaces what was overheard or is stale, but never a fresh value
/// that the rider told, and never a measured size by a nominal one. A repair that fits a part is told first hand, so it replaces anything.
/// </remarks>
public static class Telling
{
    public const string Told = "told", Heard = "heard", Done = "done";

    public static BikeProfile Tell(BikeProfile bike, IEnumerable<FactTold> facts, DateTimeOffset now, string how) => bike with
    {
        Facts = facts.Aggregate(bike.Facts, (all, f) => f.Value is null ? all.Remove(f.Field) : all.SetItem(f.Field, new BikeFact(f.Value, now, how))),
    };

    /// <param name="isStale">Whether what stands in a field can be relied on no more.</param>
    /// <returns>Those of the overheard facts that are to be kept, because they are news.</returns>
    public static ImmutableArray<FactTold> News(BikeProfile bike, IEnumerable<FactTold> heard, Func<string, FieldKind> kindOf, Func<string, BikeFact, bool> isStale) =>
    [
        .. heard.Where(f => f.Value is { } value && (!bike.Facts.TryGetValue(f.Field, out var old)
            || (old.Value != value && (old.How != Told || isStale(f.Field, old)) && (kindOf(f.Field).IsExact(value) || !kindOf(f.Field).IsExact(old.Value))))),
    ];
}
