using System.Collections.Immutable;
using ShedBot.Coaching.Speaking;
using ShedBot.Reasoning.Words;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Puts what was counted into sentences for moderators.</summary>
/// <param name="asCoach">Weighs as the coach does.</param>
internal sealed class MoveTelling(RuleSheet rules, CaseWeigher asCoach, IReadOnlyList<WeighedCase> cases, double[] times)
{
    /// <summary>How often a complaint that is told plainly is not the one that is meant; as the coach takes it.</summary>
    private const double Doubt = 0.02;

    private readonly Dictionary<int, (double[] Before, double[] After)> told = [];
    private readonly double[] ones = OddsCount.Ones(rules.Faults);
    private double[]?[] sums = [];

    public LearntMove Odds(OddsCounted counted)
    {
        var fault = rules.Model.Faults[counted.Fault].Id;
        var complaint = CommonestComplaint(counted.Fault);
        var (before, after) = Told(complaint);
        var (was, will) = (before[counted.Fault], after[counted.Fault]);
        var says = $"{Say.Capital(Is(fault))}: behind about {LearningWords.Count(counted.Counted)} of {counted.Cases} cases that bear on it ({counted.Mended} mended); "
            + $"the rules expected {LearningWords.Count(counted.Expected)}. When only '{Called(complaint)}' is known, its chance goes from {LearningWords.Percent(was)} to {LearningWords.Percent(will)}.";
        return new LearntMove(
            new OddsTarget(fault), was, will, counted.Times, counted.Counted, counted.Expected, counted.Cases, counted.Mended, counted.Members, says);
    }

    public LearntMove Link(PartCounted part)
    {
        var target = (LinkTarget)part.Target;
        var (means, state) = Seen(target);
        return Part(part, $"{Say.Capital(Is(target.Fault))}: of about {LearningWords.Count(part.All)} bikes with it that were asked about {means}, {LearningWords.Count(part.Counted)} showed '{state}'; "
            + $"the rules expected {LearningWords.Count(part.All * part.Before)}. Its strength goes from {Strength(part.Before)} to {Strength(part.After)}.");
    }

    public LearntMove Mend(PartCounted part)
    {
        var target = (MendTarget)part.Target;
        return Part(part, $"{Say.Capital(rules.Knowledge.Repairs[target.Repair].Does)}: of about {LearningWords.Count(part.All)} tries when {Is(target.Fault)}, "
            + $"{LearningWords.Count(part.Counted)} mended it; the rules expected {LearningWords.Count(part.All * part.Before)}. Its chance goes from {Strength(part.Before)} to {Strength(part.After)}.");
    }

    private static LearntMove Part(PartCounted part, string says) => new(
        part.Target, part.Before, part.After, 1, part.Counted, part.All * part.Before, part.Cases, part.Mended, part.Members, says);

    private string Is(string fault) => rules.Knowledge.Faults[fault].Is;

    private string Called(int complaint) => rules.Knowledge.Complaints[rules.Model.Findings[complaint].Id].Called;

    private (string Means, string State) Seen(LinkTarget target) => rules.Knowledge.Findings.TryGetValue(target.Finding, out var finding)
        ? (finding.Means, finding.States.First(s => s.Id == target.State).Says)
        : (rules.Knowledge.Complaints[target.Finding].Called, target.State);

    private static string Strength(double chance) => $"{LearningWords.Percent(chance)} ({LikelihoodWords.Text(LikelihoodWords.For(chance))})";

    /// <summary>Of the complaints that were told, the one behind which the fault is expected most often.</summary>
    private int CommonestComplaint(int fault)
    {
        if (sums.Length == 0) sums = Expected();
        return Enumerable.Range(0, sums.Length).Where(c => sums[c] is not null).MaxBy(c => sums[c]![fault]);
    }

    /// <summary>By complaint: how often each fault is expected behind it.</summary>
    private double[]?[] Expected()
    {
        var expected = new double[]?[rules.Model.Findings.Length];
        foreach (var opening in cases.GroupBy(c => c.Opened, ReferenceEqualityComparer.Instance))
        {
            foreach (var complaint in opening.First().Story.Complaints)
                ((WeighedSets)opening.Key!).AddChances(expected[complaint.Finding] ??= new double[rules.Faults], ones, opening.Sum(c => c.Weight));
        }

        return expected;
    }

    private (double[] Before, double[] After) Told(int complaint)
    {
        if (told.TryGetValue(complaint, out var known)) return known;
        var others = Math.Max(1, rules.Knowledge.Complaints.Count - 1);
        var story = new CaseStory(
            default, default, default, false, ImmutableSortedDictionary<string, string>.Empty, [new ToldComplaint(complaint, Doubt / others, Doubt)], [], [[]], []);
        var opened = asCoach.Weigh(story, 0, 0).Opened;
        return told[complaint] = (opened.Chances(ones), opened.Chances(times));
    }
}
