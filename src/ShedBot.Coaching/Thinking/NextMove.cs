using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Judging;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Coaching.Thinking;

/// <summary>Decides what comes next, from what is believed and what may still be done.</summary>
internal sealed class NextMove(CaseView view, CoachOptions options)
{
    /// <summary>How much less likely a repair is to help when the same hands do it once more.</summary>
    private const double SecondTry = 0.4;

    /// <summary>So many questions are asked before 'something that is not listed' may end a case.</summary>
    private const int AskedBeforeSomethingElse = 3;

    /// <summary>
    /// 'Something that is not listed' ends a case only above this chance while there is a step worth taking: with many causes open it may
    /// lead at a sixth, and giving up there is giving up too soon.
    /// </summary>
    private const double PlainlySomethingElse = 0.3;

    /// <summary>A question from memory may cost the case so much more than a look at the bike and still comes first.</summary>
    private const double MemoryFirst = 1.03;

    /// <summary>So many questions from memory may be put before looks at the bike; after that they only put off what has to be done.</summary>
    private const int MostFromMemory = 2;

    /// <summary>'What if' questions are weighed with less care than the step itself: several are weighed for one that is put.</summary>
    private static readonly PlannerOptions Quick = new(MostSets: 24, MostChecks: 8, MostRepairs: 12, ExactSituations: 0, Deepened: 0);

    private readonly KnowledgeBase knowledge = view.Knowledge;

    public Move Choose()
    {
        var conflict = Misfit.Measure(view);
        if (Misfit.ToAskAgain(view, conflict) is { } culprit) return new AskAgain(culprit);

        var tried = view.Standing.Where(e => e.Kind is EntryKind.RepairFailed or EntryKind.CameBack)
            .Select(e => e.Subject).ToHashSet(StringComparer.Ordinal);
        var decision = Planner.Decide(Request(view, handsOff: view.SaidNotReady, tried));
        if (decision.Step is GetHelp && view.SaidNotReady) return new Rest();
        if (Judge(decision, conflict, tried) is { } reason) return new PassOn(reason);
        if (FactWorthAsking(tried) is { } fact) return new AskFact(fact);
        return decision.Step switch
        {
            DoCheck check when HandsOn(check) && !view.Ready => FromMemory(decision) ?? (Move)new AskReady(),
            DoCheck check => new AskCheck(check.Check),
            DoRepair when !view.Ready => new AskReady(),
            DoRepair repair => new ShowRepair(repair.Repair, decision),
            _ => new PassOn(HandOverReason.HelpIsCheapest),
        };
    }

    private HandOverReason? Judge(Decision decision, Conflict? conflict, HashSet<string> tried)
    {
        var noStepLeft = decision.Considered.All(c => c.Step is GetHelp);
        var reasons = HandOver.Judge(
            new CaseStanding(
                view.Belief,
                view.Evidence,
                conflict,
                AskedAgain: Misfit.Stays(view, conflict),
                HelpIsCheapest: decision.Step is GetHelp,
                AnyStepLeft: !noStepLeft,
                view.AskedSinceRepair),
            new HandOverLimits(Questions: tried.Count == 0 ? options.MostQuestions : options.MostAfterRepair));
        return reasons.Where(r => r != HandOverReason.SomethingElse || SomethingElseIsPlain())
            .OrderBy(r => r == HandOverReason.HelpIsCheapest)
            .Select(r => (HandOverReason?)r)
            .FirstOrDefault();
    }

    private bool SomethingElseIsPlain() =>
        view.Asked >= AskedBeforeSomethingElse && view.Belief.Marginal(KnowledgeBase.SomethingElse) > PlainlySomethingElse;

    /// <summary>A question that needs no hands, when it is about as good as the best step: the rider may be anywhere.</summary>
    private AskCheck? FromMemory(Decision decision) => view.Asked >= MostFromMemory ? null : decision.Considered
        .Where(c => c.ExpectedCost <= decision.ExpectedCost * MemoryFirst)
        .Select(c => c.Step)
        .OfType<DoCheck>()
        .Where(c => !HandsOn(c))
        .Select(c => new AskCheck(c.Check))
        .FirstOrDefault();

    private bool HandsOn(DoCheck check) => knowledge.Checks[check.Check].HandsOn;

    /// <summary>A fact of the bike is asked only when some answer to it would change the very next step.</summary>
    private string? FactWorthAsking(HashSet<string> tried)
    {
        var asked = view.Standing.Count(e => e.Kind is EntryKind.Fact or EntryKind.FactUnknown && e.Score >= 1);
        if (asked >= options.MostFacts || view.Asked >= options.FactsWithin || tried.Count > 0) return null;
        return knowledge.Facts.Values
            .Where(f => !view.Facts.ContainsKey(f.Id)
                && !view.Standing.Any(e => e.Kind == EntryKind.FactUnknown && e.Subject == f.Id))
            .Select(f => (f.Id, Weight: Weight(f)))
            .Where(f => f.Weight > 0.1)
            .OrderByDescending(f => f.Weight)
            .ThenBy(f => f.Id, StringComparer.Ordinal)
            .Take(3)
            .Select(f => f.Id)
            .FirstOrDefault(id => Changes(knowledge.Facts[id], tried));
    }

    private bool Changes(FactRule fact, HashSet<string> tried) => fact.Values
        .Select(v => Planner.Decide(Request(view.WithFact(fact.Id, v.Id), view.SaidNotReady, tried), Quick).Step)
        .Distinct()
        .Count() > 1;

    /// <summary>How much belief a fact could move: the belief in each fault it bears on times the size of the move.</summary>
    private double Weight(FactRule fact) => knowledge.Faults.Values.Sum(fault =>
        fault.MovedBy.Where(m => m.Fact == fact.Id)
            .Select(m => m.Times > 0 ? Math.Abs(Math.Log(m.Times)) : 3)
            .DefaultIfEmpty(0).Max() * Chance(fault.Id));

    private double Chance(string fault) => view.Model.Faults.Any(f => f.Id == fault) ? view.Belief.Marginal(fault) : 0;

    private PlanRequest Request(CaseView of, bool handsOff, HashSet<string> tried)
    {
        var closedChecks = of.Standing
            .Where(e => e.Kind is EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot)
            .Select(e => e.Subject)
            .Concat(KnownAsWell(of))
            .Concat(handsOff ? knowledge.Checks.Values.Where(c => c.HandsOn).Select(c => c.Id) : [])
            .ToImmutableHashSet(StringComparer.Ordinal);
        var closedRepairs = of.Standing.Where(e => e.Kind == EntryKind.RepairRefused).Select(e => e.Subject)
            .Concat(handsOff ? knowledge.Repairs.Keys : [])
            .ToImmutableHashSet(StringComparer.Ordinal);
        return new PlanRequest(of.Belief)
        {
            Weights = options.Weights,
            HazardLimit = options.HazardLimit,
            ChecksClosed = closedChecks,
            RepairsClosed = closedRepairs,
            RepairSuccessFactor = tried.ToImmutableDictionary(r => r, _ => SecondTry, StringComparer.Ordinal),
            OpenCovers = of.OpenCovers,
            ClosedCovers = of.Standing.Where(e => e is { Kind: EntryKind.Cannot, Value: not null }).Select(e => e.Value!)
                .ToImmutableHashSet(StringComparer.Ordinal),
        };
    }

    /// <summary>Checks of findings that a check at least as good has answered since the last repair.</summary>
    private IEnumerable<string> KnownAsWell(CaseView of)
    {
        var answered = of.SinceRepair.Where(e => e.Kind == EntryKind.Answer && knowledge.Checks.ContainsKey(e.Subject))
            .Select(e => of.Model.Checks[of.Model.CheckAt(e.Subject)]).ToList();
        return of.Model.Checks
            .Where(c => answered.Any(a => a.Finding == c.Finding && a.Error.FalseNegative <= c.Error.FalseNegative))
            .Select(c => c.Id);
    }
}
