using System.Collections.Immutable;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>A proposal's changes, laid over the club's rules as they stand and looked over.</summary>
/// <param name="Layer">The club's layer after; null when the changes cannot be made.</param>
/// <param name="Knowledge">The club's rules after; null when something stops it.</param>
/// <param name="Problems">What is new with these changes, what stops it first.</param>
/// <param name="Reads">The changes read aloud.</param>
internal sealed record Checked(Layer? Layer, KnowledgeBase? Knowledge, ImmutableArray<PlainProblem> Problems, ImmutableArray<string> Reads)
{
    public static Checked Of(RulesNow rules, Proposal proposal, SheetState? sheet)
    {
        var laid = rules.Lay(proposal.Changes, proposal.Learnt.Length > 0 ? proposal.Learnt : rules.Learnt);
        var before = rules.Load.Problems.Select(p => (p.Code, p.What)).ToHashSet();
        ImmutableArray<PlainProblem> plain =
        [
            .. laid.Problems.Where(p => !before.Contains((p.Code, p.What))).Select(p => PlainProblems.Of(p, sheet, laid.Changes, rules.Knowledge))
                .DistinctBy(p => p.Say).OrderBy(p => p.Stops ? 0 : 1),
        ];
        return new Checked(laid.Layer, laid.Knowledge, plain, new RuleReading(rules.Knowledge, laid.Knowledge).Of(laid.Changes));
    }
}
