using System.Collections.Immutable;
using ShedBot.Reasoning.Words;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Puts what was counted into sentences for moderators.</summary>
internal sealed class MoveTelling(RuleSheet rules, CaseWeigher weigher, IReadOnlyList<WeighedCase> cases, double[] times)
{
    /// <summary>How often a complaint that is told plainly is not the one that is meant; as the coach takes it.</summary>
    private const double Doubt = 0.02;

    private readonly OddsCount count = new(weigher.Sets, cases, rules.Faults);
    private readonly Dictionary<int, (double[] Before, double[] After)> told = [];

    public LearntMove Odds(OddsCounted counted)
    {
        var fault = rules.Model.Faults[counted.Fault].Id;
        var complaint = CommonestComplaint(counted.Fault);
        var (before, after) = Told(complaint);
        var (was, will) = (before[counted.Fault], after[counted.Fault]);
        var says = $"Of {counted.Cases} cases that bear on it ({counted.Mended} mended), it was this in about {LearningWords.Count(counted.Counted)}: {Is(fault)}. "
            + $"The rules expected {LearningWords.Count(counted.Expected)}. When only '{Called(complaint)}' is known, its chance goes from {LearningWords.Percent(was)} to {LearningWords.Percent(will)}.";
        return new LearntMove(
            new OddsTarget(fault), was, will, counted.Times, counted.Counted, counted.Expected, counted.Cases, counted.Mended, counted.Members, says);
    }

    public LearntMove Link(PartCounted part)
    {
        var target = (LinkTarget)part.Target;
        var (means, state) = Seen(target);
        return Part(part, $"Of about {LearningWords.Count(part.All)} that were asked about {means} and had this: {Is(target.Fault)}, {LearningWords.Count(part.Counted)} showed '{state}'; "
            + $"the rules expected {LearningWords.Count(part.All * part.Before)}. Its strength goes from {Strength(part.Before)} to {Strength(part.After)}.");
    }

    public LearntMove Mend(PartCounted part)
    {
        var target = (MendTarget)part.Target;
        return Part(part, $"Of about {LearningWords.Count(part.All)} tries of this repair: {rules.Knowledge.Repairs[target.Repair].Does}, on this cause: {Is(target.Fault)}, "
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
        var ones = count.Ones();
        var sums = new SortedDictionary<int, double>();
        foreach (var c in cases)
        {
            var chance = count.Chances(c.Opened, c.Odds, ones)[fault];
            foreach (var complaint in c.Story.Complaints) sums[complaint.Finding] = sums.GetValueOrDefault(complaint.Finding) + (c.Weight * chance);
        }

        return sums.MaxBy(s => s.Value).Key;
    }

    private (double[] Before, double[] After) Told(int complaint)
    {
        if (told.TryGetValue(complaint, out var known)) return known;
        var others = Math.Max(1, rules.Knowledge.Complaints.Count - 1);
        var story = new CaseStory(
            default, default, default, false, ImmutableSortedDictionary<string, string>.Empty, [new ToldComplaint(complaint, Doubt / others, Doubt)], [], [[]], []);
        var opened = weigher.Weigh(story, 0, 0, 0);
        return told[complaint] = (count.Chances(opened.Opened, opened.Odds, count.Ones()), count.Chances(opened.Opened, opened.Odds, times));
    }
}
