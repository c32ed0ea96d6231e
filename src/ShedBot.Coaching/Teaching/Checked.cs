using System.Collections.Immutable;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Coaching.Teaching;

/// <summary>A proposal's changes, laid over the club's rules as they stand and looked over.</summary>
/// <param name="Layer">The club's layer after; null when the changes cannot be made.</param>
/// <param name="Knowledge">The club's rules after; null when something stops it.</param>
/// <param name="Problems">What is new with these changes, what stops it first.</param>
/// <param name="Reads">The changes read aloud.</param>
internal sealed record Checked(ImmutableArray<RuleChange> Changes, Layer? Layer, KnowledgeBase? Knowledge, ImmutableArray<PlainProblem> Problems, ImmutableArray<string> Reads)
{
    public static Checked Of(ClubRules rules, Proposal proposal, SheetState? sheet) =>
        Of(rules, ChangesText.Read(proposal.Changes), proposal.Learnt.Length > 0 ? proposal.Learnt : rules.Learnt, sheet);

    private static Checked Of(ClubRules rules, ImmutableArray<RuleChange> changes, string learnt, SheetState? sheet)
    {
        var applied = rules.Layer.Apply(changes);
        if (applied.Layer is not { } made) return Told(rules, changes, null, null, applied.Problems, sheet);
        var layer = rules.Base.Settle(made);
        var options = ClubRules.Options(learnt);
        var load = LayeredRules.Load(rules.Base, layer, options);
        // What did not fit before must not keep a club from publishing what does.
        if (load.Knowledge is null && !rules.Load.SetAside.IsEmpty && LayeredRules.LoadKept(rules.Base, layer, options) is var kept && OnlyBefore(kept, rules)) load = kept;
        return Told(rules, changes, layer, load.Knowledge, load.Problems, sheet);
    }

    private static bool OnlyBefore(LayeredLoad kept, ClubRules rules)
    {
        var before = rules.Load.SetAside.Select(s => s.Part.ToString()).ToHashSet(StringComparer.Ordinal);
        return kept.Knowledge is not null && kept.SetAside.All(s => before.Contains(s.Part.ToString()));
    }

    private static Checked Told(ClubRules rules, ImmutableArray<RuleChange> changes, Layer? layer, KnowledgeBase? knowledge, ImmutableArray<Problem> problems, SheetState? sheet)
    {
        var before = rules.Load.Problems.Select(p => (p.Code, p.What)).ToHashSet();
        ImmutableArray<PlainProblem> plain =
        [
            .. problems.Where(p => !before.Contains((p.Code, p.What))).Select(p => PlainProblems.Of(p, sheet, changes, rules.Knowledge))
                .DistinctBy(p => p.Say).OrderBy(p => p.Stops ? 0 : 1),
        ];
        return new Checked(changes, layer, knowledge, plain, new RuleReading(rules.Knowledge, knowledge).Of(changes));
    }
}
