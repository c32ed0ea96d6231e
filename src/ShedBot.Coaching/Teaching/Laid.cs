using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Coaching.Teaching;

/// <summary>Changes laid over a club's rules.</summary>
/// <param name="Layer">The club's layer after; null when the changes cannot be made.</param>
/// <param name="Knowledge">The club's rules after; null when something stops it.</param>
/// <param name="Problems">All of the linter's, old and new.</param>
internal sealed record Laid(ImmutableArray<RuleChange> Changes, Layer? Layer, KnowledgeBase? Knowledge, ImmutableArray<Problem> Problems)
{
    public static Laid Of(RulesNow rules, ImmutableArray<RuleChange> changes, CompileOptions options)
    {
        var applied = rules.Layer.Apply(changes);
        if (applied.Layer is not { } made) return new Laid(changes, null, null, applied.Problems);
        var layer = rules.Base.Settle(made, rules.Layer);
        var load = LayeredRules.Load(rules.Base, layer, options);
        // What did not fit before must not keep a club from publishing what does.
        if (load.Knowledge is null && !rules.Load.SetAside.IsEmpty && LayeredRules.LoadKept(rules.Base, layer, options) is var kept && OnlyBefore(kept, rules)) load = kept;
        return new Laid(changes, layer, load.Knowledge, load.Problems);
    }

    private static bool OnlyBefore(LayeredLoad kept, RulesNow rules)
    {
        var before = rules.Load.SetAside.Select(s => s.Part.ToString()).ToHashSet(StringComparer.Ordinal);
        return kept.Knowledge is not null && kept.SetAside.All(s => before.Contains(s.Part.ToString()));
    }
}
