using ShedBot.Coaching.Learning.Proving;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Counts what faults showed and what repairs mended, each case shared out over the causes that its whole story leaves open.</summary>
/// <remarks>
/// <para>A finding counts for a fault only in cases in which it was asked, and only where no other fault that shows in it is there. What counts is its true
/// state as far as the answers tell, not the answers: their errors are taken out.</para>
/// <para>A try of a repair counts for a fault that was there before it: as mended, or as not.</para>
/// </remarks>
internal sealed class PartsCount
{
    private readonly RuleSheet rules;

    /// <param name="fold">The part of the cases that is not counted.</param>
    /// <param name="times">By fault: what its odds are multiplied with.</param>
    public PartsCount(RuleSheet rules, CaseFolds folds, int fold, double[] times)
    {
        (this.rules, Times) = (rules, times);
        foreach (var at in folds.Training(fold)) Add(folds.Cases[at]);
    }

    public double[] Times { get; }

    /// <summary>By fault and finding.</summary>
    public SortedDictionary<(int Fault, int Finding), Asked> Shown { get; } = [];

    /// <summary>By repair and fault; way 0 is not mended, way 1 is mended.</summary>
    public SortedDictionary<(int Repair, int Fault), Tally> Mended { get; } = [];

    private void Add(WeighedCase c)
    {
        var (shown, tried) = (new Dictionary<(int, int, int), double>(), new Dictionary<(int, int), double>());
        var total = c.Ways.Sum(w => w.Times(Times));
        foreach (var way in c.Ways)
        {
            var chance = way.Times(Times) / total;
            CountShown(c, way.Course, chance, shown);
            CountTries(c, way.Course, chance, tried);
        }

        foreach (var ((stretch, at, fault), chance) in shown)
        {
            var said = c.Story.Stretches[stretch][at];
            if (!Shown.TryGetValue((fault, said.Finding), out var asked)) Shown[(fault, said.Finding)] = asked = new Asked();
            asked.Add(c.Member, c.Weight * chance, said.Raw);
        }

        foreach (var known in shown.GroupBy(s => (Fault: s.Key.Item3, c.Story.Stretches[s.Key.Item1][s.Key.Item2].Finding)).Where(g => g.Sum(s => s.Value) >= 0.5))
            Shown[known.Key].Note(c.Member, c.Story.Mended);
        foreach (var (key, _) in tried.Where(t => t.Value >= 0.5)) Mended[key].Note(c.Member, c.Story.Mended);
    }

    private void CountShown(WeighedCase c, Course course, double chance, Dictionary<(int, int, int), double> shown)
    {
        for (var stretch = 0; stretch < c.Story.Stretches.Length; stretch++)
        {
            for (var at = 0; at < c.Story.Stretches[stretch].Length; at++)
            {
                var sheet = rules.Finding(c.Story.Stretches[stretch][at].Finding);
                var (one, other) = (course.OneIn(stretch), course.OtherIn(stretch));
                var (shows, too) = (one >= 0 && sheet.Linked[one], other >= 0 && sheet.Linked[other]);
                if (shows == too) continue;
                var key = (stretch, at, shows ? one : other);
                shown[key] = shown.GetValueOrDefault(key) + chance;
            }
        }
    }

    private void CountTries(WeighedCase c, Course course, double chance, Dictionary<(int, int), double> tried)
    {
        for (var trial = 0; trial < c.Story.Trials.Length; trial++)
        {
            var repair = rules.Model.RepairAt(c.Story.Trials[trial].Repair);
            foreach (var (fault, until) in new[] { (course.One, course.OneUntil), (course.Other, course.OtherUntil) })
            {
                if (fault < 0 || until < trial || rules.Mends(repair)[fault] == 0) continue;
                if (!Mended.TryGetValue((repair, fault), out var tally)) Mended[(repair, fault)] = tally = new Tally(2);
                tally.Add(c.Member, until == trial ? 1 : 0, c.Weight * chance);
                tried[(repair, fault)] = tried.GetValueOrDefault((repair, fault)) + chance;
            }
        }
    }
}
