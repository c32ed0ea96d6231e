using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Nudging;

/// <summary>One task of one of the member's bikes.</summary>
internal sealed record DueItem(BikeProfile Bike, PlanItem Item)
{
    private const double ShortRidingDays = 2;

    /// <summary>All tasks of all bikes: what can hurt most when it is left first, then the overdue, then the soonest.</summary>
    /// <remarks>What is dangerous to get wrong is dangerous to leave: the order by hazard is common practice, no source.</remarks>
    public static ImmutableArray<DueItem> Of(ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge, LocalDate today, DateTimeZone zone) =>
    [
        .. bikes.SelectMany(b => ServicePlan.Of(b, knowledge, today, zone).Where(i => !i.Rule.BeforeEachRide).Select(i => new DueItem(b, i)))
            .OrderByDescending(d => d.Danger).ThenByDescending(d => d.Item.State == DueState.Overdue).ThenBy(d => d.Item.Expected ?? LocalDate.MaxIsoValue)
            .ThenBy(d => d.Item.DueKey, StringComparer.Ordinal),
    ];

    public string Key => Item.DueKey;

    /// <summary>Never before the day on which it was expected.</summary>
    public bool IsDue(LocalDate today) => Item.State is DueState.Due or DueState.Overdue && Item.Expected <= today;

    /// <summary>
    /// Told on the day it falls due, whatever was told the day before: what can hurt most when it is left; and what is done after so little riding, as the
    /// looks after the first rides, that days of waiting would be the better part of its time.
    /// </summary>
    /// <remarks>Common practice, no source.</remarks>
    public bool Pressing => Danger >= 3 || Item.Amount.Allowed <= Item.Amount.Measure switch
    {
        Measure.Kilometres => ShortRidingDays * UsualPace.Kilometres,
        Measure.Hours => ShortRidingDays * UsualPace.Kilometres / UsualPace.KilometresPerHour,
        _ => ShortRidingDays,
    };

    /// <summary>Expected within a week, and by a bike that does not rest.</summary>
    public bool IsSoon(LocalDate today) => !IsDue(today) && Item is { State: DueState.Soon or DueState.Due or DueState.Overdue, Expected: not null };

    /// <summary>Near enough to be done with what is due: as good as due, and done early it counts as done.</summary>
    public bool ComesAlong(LocalDate today, int aheadDays) =>
        IsSoon(today) && Item.Expected <= today.PlusDays(aheadDays) && Item.Amount.Share >= Milestones.EarlyEnough;

    /// <summary>Due, if the bike did not rest.</summary>
    public bool Rests => Item.State == DueState.Waiting && Item.Amount.Share >= 1;

    private int Danger => Item.Rule.Cautions.Any(c => c.Word == "DANGER") ? 4 : Item.Rule.Hazard switch { "high" => 3, "medium" => 2, "low" => 1, _ => 0 };
}
