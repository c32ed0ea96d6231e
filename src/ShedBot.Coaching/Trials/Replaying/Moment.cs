using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>A closed case as it stood at a point: what was known then, without what was taken back later.</summary>
/// <param name="Bike">With the facts that were known by then; what a fact was before it was learnt anew is not kept.</param>
internal sealed record Moment(TrialPoint Point, Case Case, BikeProfile Bike, DateTimeOffset At)
{
    public static ImmutableArray<Moment> Of(ClosedCase closed)
    {
        var standing = closed.Case.Standing.ToImmutableArray();
        if (standing.FirstOrDefault(e => e.Kind == EntryKind.Complaint) is not { } complaint) return [];
        var moments = ImmutableArray.CreateBuilder<Moment>();
        moments.Add(Until(closed, standing, TrialPoint.AfterComplaint, complaint));
        if (standing.FirstOrDefault(e => e.Kind == EntryKind.RepairShown) is { } shown) moments.Add(Until(closed, standing, TrialPoint.BeforeRepair, shown));
        moments.Add(Until(closed, standing, TrialPoint.AtEnd, standing[^1]));
        return moments.ToImmutable();
    }

    private static Moment Until(ClosedCase closed, ImmutableArray<CaseEntry> standing, TrialPoint point, CaseEntry last)
    {
        var bike = closed.Bike ?? BikeProfile.New(closed.Case.Bike, closed.Case.Member);
        return new Moment(
            point,
            closed.Case with { Entries = [.. standing.Where(e => e.Turn <= last.Turn)] },
            bike with { Facts = bike.Facts.RemoveRange(bike.Facts.Where(f => f.Value.Learnt > last.At).Select(f => f.Key)) },
            last.At);
    }
}
