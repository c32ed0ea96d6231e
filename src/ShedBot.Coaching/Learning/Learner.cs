using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Learning;

/// <summary>From closed cases to what they would move. Pure: the same cases in any order give the same, and a case that is not given has never been.</summary>
/// <remarks>
/// Every time all is counted anew, against the rules without anything learnt and through these very rules, whatever version a case was coached with. So
/// nothing is counted twice, and when a member's cases are deleted nothing of them is left in the next count.
/// </remarks>
public static class Learner
{
    /// <param name="unlearnt">The club's rules without anything learnt.</param>
    /// <param name="cases">All closed cases of the club, whatever their end.</param>
    /// <param name="now">Cases fade with their age, UTC.</param>
    public static LearningReport Learn(KnowledgeBase unlearnt, IEnumerable<ClosedCase> cases, LearningLimits limits, DateTimeOffset now) =>
        Learn(unlearnt, cases, limits, now, _ => true);

    /// <summary>Counts again what a club has taken over before, and nothing else: for when cases were deleted, or more have come.</summary>
    /// <param name="approved">Only what it holds is looked at; what no longer moves enough is not in the report.</param>
    /// <inheritdoc cref="Learn(KnowledgeBase, IEnumerable{ClosedCase}, LearningLimits, DateTimeOffset)"/>
    public static LearningReport CountAnew(
        KnowledgeBase unlearnt, Learnt approved, IEnumerable<ClosedCase> cases, LearningLimits limits, DateTimeOffset now)
    {
        var keys = approved.Odds.Select(o => new OddsTarget(o.Fault).Key)
            .Concat(approved.Links.Select(l => new LinkTarget(l.Fault, l.Finding, l.State).Key))
            .Concat(approved.Mends.Select(m => new MendTarget(m.Repair, m.Fault).Key))
            .ToHashSet(StringComparer.Ordinal);
        return Learn(unlearnt, cases, limits, now, target => keys.Contains(target.Key));
    }

    private static LearningReport Learn(
        KnowledgeBase unlearnt, IEnumerable<ClosedCase> cases, LearningLimits limits, DateTimeOffset now, Func<LearningTarget, bool> wanted)
    {
        var stories = Counting(unlearnt, cases, limits, now);
        var mended = stories.Count(s => s.Mended);
        var members = stories.Select(s => s.Member.Value).Distinct().Order(StringComparer.Ordinal).ToList();
        if (mended == 0) return new LearningReport(Learnt.Nothing, [], stories.Count, 0, members.Count);

        var rules = new RuleSheet(unlearnt);
        var weigher = new CaseWeigher(rules);
        var weights = CaseWeights.Of(stories, limits, now);
        var anchors = CaseWeights.Anchors(stories, weights, limits.SampleSize);
        var weighed = stories.Select((s, i) => weigher.Weigh(s, members.BinarySearch(s.Member.Value, StringComparer.Ordinal), weights[i], anchors[i])).ToList();
        var safety = new SafetyLimits(unlearnt);
        bool Wanted(LearningTarget target) => wanted(target) && !limits.IsOff(target);

        var odds = new OddsLearning(rules, limits, weighed, weigher.Sets)
            .Learn(f => Wanted(new OddsTarget(rules.Model.Faults[f].Id)), f => !safety.IsGrave(rules.Model.Faults[f].Id));
        var times = new double[rules.Faults];
        Array.Fill(times, 1);
        foreach (var o in odds) times[o.Fault] = o.Times;
        var parts = new PartsCount(rules, weigher.Sets, times);
        foreach (var c in weighed) parts.Add(c);

        var telling = new MoveTelling(rules, weigher, weighed, times);
        var moves = odds.Where(o => Math.Max(o.Times, 1 / o.Times) >= limits.LeastChange).OrderByDescending(o => Math.Abs(Math.Log(o.Times))).Select(telling.Odds)
            .Concat(PartsLearning.Links(rules, limits, safety, parts, Wanted).OrderByDescending(Step).Select(telling.Link))
            .Concat(PartsLearning.Mends(rules, limits, parts, Wanted).OrderByDescending(Step).Select(telling.Mend))
            .ToImmutableArray();
        return new LearningReport(Together(moves), moves, stories.Count, mended, members.Count);
    }

    /// <summary>The cases that are over, in an order of their own; a mended one that may still come back waits.</summary>
    private static List<CaseStory> Counting(KnowledgeBase unlearnt, IEnumerable<ClosedCase> cases, LearningLimits limits, DateTimeOffset now) =>
    [
        .. cases.Where(c => c.Case.IsClosed && (c.Outcome.Phase != CasePhase.Solved || (now - c.Outcome.At).TotalDays >= limits.WaitDays))
            .OrderBy(c => c.Case.Id.Value, StringComparer.Ordinal)
            .Select(c => StoryReader.Read(c, unlearnt))
            .OfType<CaseStory>(),
    ];

    private static double Step(PartCounted part) => Math.Abs(part.After - part.Before);

    private static Learnt Together(ImmutableArray<LearntMove> moves) => Learnt.Of(
        moves.Select(m => m.Target is OddsTarget t ? new LearntOdds(t.Fault, m.Times) : null).OfType<LearntOdds>(),
        moves.Select(m => m.Target is LinkTarget t ? new LearntLink(t.Fault, t.Finding, t.State, m.After) : null).OfType<LearntLink>(),
        moves.Select(m => m.Target is MendTarget t ? new LearntMend(t.Repair, t.Fault, m.After) : null).OfType<LearntMend>());
}
