namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Counts what faults showed and what repairs mended, each case shared out over the causes that its whole story leaves open.</summary>
/// <remarks>
/// <para>A finding counts for a fault only in cases in which it was asked, and only where no other fault that shows in it is there. What counts is its true
/// state as far as the answers tell, not the answers: their errors are taken out.</para>
/// <para>A try of a repair counts for a fault that was there before it: as mended, or as not.</para>
/// </remarks>
internal sealed class PartsCount(RuleSheet rules, PairSets sets, double[] times)
{
    /// <summary>Courses that are less likely than this in their case are left out.</summary>
    private const double Least = 1e-3;

    /// <summary>By fault and finding.</summary>
    public SortedDictionary<(int Fault, int Finding), Asked> Shown { get; } = [];

    /// <summary>By repair and fault; way 0 is not mended, way 1 is mended.</summary>
    public SortedDictionary<(int Repair, int Fault), Tally> Mended { get; } = [];

    public void Add(WeighedCase c)
    {
        var weigher = new StoryWeigher(rules, c.Story);
        var (shown, tried) = (new Dictionary<(int, int), double>(), new Dictionary<(int, int), double>());
        foreach (var (course, chance) in Courses(c, weigher))
        {
            CountShown(c, weigher, course, chance, shown);
            CountTries(c, course, chance, tried);
        }

        foreach (var (key, _) in shown.Where(s => s.Value >= 0.5)) Shown[key].Note(c.Member, c.Story.Mended);
        foreach (var (key, _) in tried.Where(t => t.Value >= 0.5)) Mended[key].Note(c.Member, c.Story.Mended);
    }

    private IEnumerable<(Course Course, double Chance)> Courses(WeighedCase c, StoryWeigher weigher)
    {
        var weights = new double[c.Told.Sets.Length];
        for (var i = 0; i < weights.Length; i++)
        {
            var (one, other) = sets.All[c.Told.Sets[i]];
            weights[i] = c.Told.Weights[i] * c.Odds[one] * times[one] * (other < 0 ? 1 : c.Odds[other] * times[other]);
        }

        var total = weights.Sum();
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] < Least * total) continue;
            var (one, other) = sets.All[c.Told.Sets[i]];
            foreach (var (course, chance) in weigher.Courses(one, other))
            {
                var share = weights[i] / total * chance * weigher.Whole(course) / c.Told.Weights[i];
                if (share >= Least) yield return (course, share);
            }
        }
    }

    private void CountShown(WeighedCase c, StoryWeigher weigher, Course course, double chance, Dictionary<(int, int), double> shown)
    {
        foreach (var (stretch, finding, sheet, weights) in weigher.Answered())
        {
            var (one, other) = (course.OneIn(stretch), course.OtherIn(stretch));
            var (shows, too) = (one >= 0 && sheet.Linked[one], other >= 0 && sheet.Linked[other]);
            if (shows == too) continue;
            var fault = shows ? one : other;
            if (!Shown.TryGetValue((fault, finding), out var asked)) Shown[(fault, finding)] = asked = new Asked();
            asked.Add(c.Member, c.Weight * chance, weights);
            shown[(fault, finding)] = shown.GetValueOrDefault((fault, finding)) + chance;
        }
    }

    private void CountTries(WeighedCase c, Course course, double chance, Dictionary<(int, int), double> tried)
    {
        for (var trial = 0; trial < c.Story.Trials.Length; trial++)
        {
            var repair = rules.Model.RepairAt(c.Story.Trials[trial].Repair);
            foreach (var (fault, until) in new[] { (course.One, course.OneUntil), (course.Other, course.OtherUntil) })
            {
                if (fault < 0 || until < trial || !rules.Model.Repairs[repair].Fixes.Any(f => rules.Model.FaultAt(f.Fault) == fault)) continue;
                if (!Mended.TryGetValue((repair, fault), out var tally)) Mended[(repair, fault)] = tally = new Tally(2);
                tally.Add(c.Member, until == trial ? 1 : 0, c.Weight * chance);
                tried[(repair, fault)] = tried.GetValueOrDefault((repair, fault)) + chance;
            }
        }
    }
}
