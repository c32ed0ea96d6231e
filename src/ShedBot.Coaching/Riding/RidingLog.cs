using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>
/// How a bike was ridden. Bounded: days older than <see cref="KeepsDays"/> before the newest ridden day are folded into totals, and breaks that ended
/// before them are dropped, so at most <see cref="KeepsDays"/> + 1 days and as many breaks are kept: with <see cref="Service.DoneLog.Keeps"/> entries of
/// service, less than 128 KiB a bike.
/// </summary>
/// <param name="Days">Ascending, one for each date.</param>
/// <param name="Folded">What is older, or null.</param>
/// <param name="Breaks">Ascending; none overlaps another or has a ridden day in it.</param>
/// <param name="Pace">What the rider said of their pace, or null.</param>
/// <param name="Last">The last entry, or null when there is none to take back.</param>
public sealed record RidingLog(
    ImmutableArray<RiddenDay> Days, FoldedRiding? Folded, ImmutableArray<RidingBreak> Breaks, StatedPace? Pace, RidingUndo? Last)
{
    /// <summary>So many days before the newest one a day is kept by itself: a year, and the month that is compared with it.</summary>
    public const int KeepsDays = 400;

    public static RidingLog None { get; } = new([], null, [], null, null);

    /// <summary>The first day of which riding is known, or null.</summary>
    public LocalDate? FirstDay => Folded?.First ?? (Days.IsEmpty ? null : Days[0].Day);

    /// <summary>The last day of which riding is known, or null.</summary>
    public LocalDate? LastDay => Days.IsEmpty ? Folded?.Last : Days[^1].Day;

    /// <returns>The break that the day is in, or null.</returns>
    public RidingBreak? BreakOn(LocalDate day) => Breaks.FirstOrDefault(b => b.Covers(day));

    /// <returns>What was ridden on a day that is kept, or null.</returns>
    public RiddenDay? On(LocalDate day) => Place(day) is var at and >= 0 ? Days[at] : null;

    /// <summary>Sets or removes one day.</summary>
    internal RidingLog Put(LocalDate day, RiddenDay? ridden) => this with
    {
        Days = (Place(day), ridden) switch
        {
            ( >= 0 and var at, null) => Days.RemoveAt(at),
            ( >= 0 and var at, _) => Days.SetItem(at, ridden),
            (_, null) => Days,
            (var at, _) => Days.Insert(~at, ridden),
        },
    };

    /// <summary>The index of a day, or the complement of the index where it would stand.</summary>
    private int Place(LocalDate day)
    {
        var (low, high) = (0, Days.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = Days[middle].Day.CompareTo(day);
            if (order == 0) return middle;
            if (order < 0) low = middle + 1;
            else high = middle - 1;
        }

        return ~low;
    }
}
