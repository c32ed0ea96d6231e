using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Learning.Proving;
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
        var read = Counting(unlearnt, cases, limits, now);
        var proved = read.Count(s => s.Mended);
        var members = read.Select(s => s.Member.Value).Distinct().Order(StringComparer.Ordinal).ToList();
        if (proved == 0) return new LearningReport(Learnt.Nothing, [], read.Count, 0, members.Count);

        var rules = new RuleSheet(unlearnt);
        var sets = new PairSets(rules.Faults);
        var weights = CaseWeights.Of(read, limits, now);
        var (stories, silence) = TellingHabits.Fitted(rules, sets, read, weights);
        var weigher = new CaseWeigher(rules, sets, silence);
        var folds = new CaseFolds([.. stories.Select((s, i) => weigher.Weigh(s, members.BinarySearch(s.Member.Value, StringComparer.Ordinal), weights[i]))]);
        var safety = new SafetyLimits(unlearnt);
        var heldOut = new HeldOut(folds, limits);
        bool Wanted(LearningTarget target) => wanted(target) && !limits.IsOff(target);

        var odds = new OddsLearning(rules, limits, folds, f => Wanted(new OddsTarget(rules.Model.Faults[f].Id)), f => !safety.IsGrave(rules.Model.Faults[f].Id));
        var common = heldOut.Test(odds);
        var counts = new Dictionary<int, PartsCount>();
        var links = new LinkLearning(rules, limits, safety, Counts, Wanted);
        var mends = new MendLearning(rules, limits, Counts, Wanted);
        var (shown, mended) = (heldOut.Test(links), heldOut.Test(mends));

        var telling = new MoveTelling(rules, CaseWeigher.AsCoach(rules), folds.Cases, common.Numbers);
        var moves = odds.Counted(common.Numbers).OrderByDescending(Far).ThenByDescending(o => Math.Abs(o.Counted - o.Expected)).Select(telling.Odds)
            .Concat(links.Counted(shown.Numbers).OrderByDescending(Step).Select(telling.Link))
            .Concat(mends.Counted(mended.Numbers).OrderByDescending(Step).Select(telling.Mend))
            .ToImmutableArray();
        return new LearningReport(Together(moves), moves, stories.Count, proved, members.Count)
        {
            Tests =
            [
                .. new[] { TestTelling.Of(LearningKind.Odds, common), TestTelling.Of(LearningKind.Links, shown), TestTelling.Of(LearningKind.Mends, mended) }.OfType<LearningTest>(),
            ],
        };

        // What cases showed and mended is shared out by odds that were learnt without the part that is kept aside.
        PartsCount Counts(int fold)
        {
            if (!counts.TryGetValue(fold, out var known)) counts[fold] = known = new PartsCount(rules, folds, fold, fold == CaseFolds.None ? common.Numbers : common.ByFold[fold]);
            return known;
        }
    }

    /// <summary>The cases that are over, in an order of their own; a mended one that may still come back waits.</summary>
    private static List<CaseStory> Counting(KnowledgeBase unlearnt, IEnumerable<ClosedCase> cases, LearningLimits limits, DateTimeOffset now) =>
    [
        .. cases.Where(c => c.Case.IsClosed && (c.Outcome.Phase != CasePhase.Solved || (now - c.Outcome.At).TotalDays >= limits.WaitDays))
            .OrderBy(c => c.Case.Id.Value, StringComparer.Ordinal)
            .Select(c => StoryReader.Read(c, unlearnt))
            .OfType<CaseStory>(),
    ];

    /// <summary>Those that the club's limit holds are equally far, though their logarithms may differ in the last digit.</summary>
    private static double Far(OddsCounted odds) => Math.Round(Math.Abs(Math.Log(odds.Times)), 9);

    private static double Step(PartCounted part) => Math.Abs(part.After - part.Before);

    private static Learnt Together(ImmutableArray<LearntMove> moves) => Learnt.Of(
        moves.Select(m => m.Target is OddsTarget t ? new LearntOdds(t.Fault, m.Times) : null).OfType<LearntOdds>(),
        moves.Select(m => m.Target is LinkTarget t ? new LearntLink(t.Fault, t.Finding, t.State, m.After) : null).OfType<LearntLink>(),
        moves.Select(m => m.Target is MendTarget t ? new LearntMend(t.Repair, t.Fault, m.After) : null).OfType<LearntMend>());
}
