using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>Judges a club's closed cases under old and new rules.</summary>
internal sealed class Replay(RulesPair rules, CoachOptions options)
{
    /// <summary>So many kinds of change of the leading cause are told.</summary>
    private const int MostSwaps = 6;

    private readonly BeliefBook old = new(rules.Old), @new = new(rules.New);

    /// <param name="skip">False to work out even what the change cannot touch; for tests and measurements, the report is the same.</param>
    /// <param name="progress">Told the share that is done, in [0, 1].</param>
    public ReplayPart Of(IEnumerable<ClosedCase> cases, bool skip, Action<double>? progress, CancellationToken ct)
    {
        var difference = RuleDifference.Of(rules);
        var all = cases.OrderBy(c => c.Case.Id.Value, StringComparer.Ordinal).Select(c => (Case: c, Moments: Moment.Of(c))).ToList();
        var read = all.Where(c => c.Moments.Length > 0).ToList();
        var touched = read.Where(c => difference.Touches(c.Case)).ToList();
        var asked = (skip ? touched : read).ToDictionary(c => c.Case.Case.Id, c => c.Moments.Select(m => (m.Point, Old: old.Ask(m), New: @new.Ask(m))).ToList());
        WorkOut(progress, ct);

        var judged = new List<(ClosedCase Case, bool Known, Dictionary<TrialPoint, (Judged Old, Judged New)> At)>();
        foreach (var (closed, _) in touched)
        {
            var (mendedOld, mendedNew) = (Mended(closed, rules.Old, rules.New), Mended(closed, rules.New, rules.Old));
            var at = asked[closed.Case.Id].Where(q => !old[q.Old].IsEmpty && !@new[q.New].IsEmpty).ToDictionary(
                q => q.Point, q => (Judged.Of(rules.Old, old[q.Old], mendedOld), Judged.Of(rules.New, @new[q.New], mendedNew)));
            if (at.Count > 0) judged.Add((closed, !closed.Outcome.Causes.IsEmpty, at));
        }

        var known = judged.Where(j => j.Known).Select(j => j.At).ToList();
        var before = known.Where(k => k.ContainsKey(TrialPoint.BeforeRepair)).Select(k => k[TrialPoint.BeforeRepair]).ToList();
        return new ReplayPart(
            read.Count,
            touched.Count,
            read.Count(c => !c.Case.Outcome.Causes.IsEmpty),
            all.Count - read.Count,
            [.. Enum.GetValues<TrialPoint>().Select(p => Point(p, [.. known.Where(k => k.ContainsKey(p)).Select(k => k[p])]))],
            Leads([.. judged.Select(j => (j.Known, Decisive(j.At)))]),
            new NextLook(rules, options).Of([.. read.Select(c => c.Moments[0])], ct),
            TrialBin.Of(before.Select(b => b.Old.Forecast)),
            TrialBin.Of(before.Select(b => b.New.Forecast)));
    }

    /// <summary>The causes that were confirmed, and those that only these rules list and that the same repair is for: which of them it was nobody saw.</summary>
    private static ImmutableHashSet<string> Mended(ClosedCase closed, KnowledgeBase knowledge, KnowledgeBase other)
    {
        var confirmed = closed.Outcome.Causes.Select(c => c.Fault).ToImmutableHashSet(StringComparer.Ordinal);
        return closed.Outcome.Repair is { } repair && !confirmed.IsEmpty && knowledge.Repairs.TryGetValue(repair, out var rule)
            ? confirmed.Union(rule.Mends.Keys.Where(f => !other.Faults.ContainsKey(f)))
            : confirmed;
    }

    private static (Judged Old, Judged New) Decisive(Dictionary<TrialPoint, (Judged Old, Judged New)> at) =>
        at.TryGetValue(TrialPoint.BeforeRepair, out var before) ? before : at[at.Keys.Max()];

    private static ReplayPoint Point(TrialPoint point, IReadOnlyList<(Judged Old, Judged New)> pairs) => new(
        point,
        [
            Paired.Shares(Measure.RightLead, pairs.Select(p => (p.Old.Right, p.New.Right))),
            Paired.Means(Measure.Brier, [.. pairs.Select(p => (p.Old.Brier, p.New.Brier))]),
            Paired.Means(Measure.Log, [.. pairs.Select(p => (p.Old.Log, p.New.Log))]),
            Paired.Calibration([.. pairs.Select(p => (p.Old.Forecast, p.New.Forecast))]),
        ]);

    private static LeadChanges Leads(IReadOnlyList<(bool Known, (Judged Old, Judged New) Judged)> cases)
    {
        var changed = cases.Where(c => c.Judged.Old.Lead != c.Judged.New.Lead).ToList();
        return new LeadChanges(
            changed.Count,
            changed.Count(c => c.Known && c.Judged.New.Right && !c.Judged.Old.Right),
            changed.Count(c => c.Known && c.Judged.Old.Right && !c.Judged.New.Right),
            changed.Count(c => !c.Known),
            Swaps.Commonest(changed.Select(c => (c.Judged.Old.Lead, c.Judged.New.Lead, 1)), MostSwaps));
    }

    private void WorkOut(Action<double>? progress, CancellationToken ct)
    {
        var (done, all) = (0, Math.Max(1, old.Questions + @new.Questions));
        void Done() => progress?.Invoke((double)Interlocked.Increment(ref done) / all);
        old.WorkOut(Done, ct);
        @new.WorkOut(Done, ct);
    }
}
