using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ShedBot.Knowledge.Layers.Safety;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>What a club must not weaken. Pure.</summary>
/// <remarks>
/// A gate and no proof: it holds words, hazards, cautions and the ways to a 'stop riding' against those of the base. Whether a club's own
/// new rule is wise is for the trial and the moderators to tell.
/// </remarks>
public static class LayerSafety
{
    /// <summary>What came of the last look at each, for as long as somebody has it: rules do not change once they are made, so the same two always give the same.</summary>
    private static readonly ConditionalWeakTable<KnowledgeBase, Looked> Pairs = new();

    /// <summary>Everything in which the club's rules are less safe than the base; empty when they are not. Phrases are listened to once all else is well.</summary>
    /// <param name="under">The base by itself.</param>
    /// <param name="club">The base with the club's layer over it.</param>
    public static ImmutableArray<Weakening> Check(KnowledgeBase under, KnowledgeBase club)
    {
        if (ReferenceEquals(under, club)) return [];
        if (Known(under, club) is { } known) return known.Weaker;
        var weaker = Shape(under, club);
        var looked = new Looked(under, weaker.IsEmpty ? [.. SafetyEars.Look(under, club)] : weaker);
        Pairs.AddOrUpdate(club, looked);
        return looked.Weaker;
    }

    /// <summary>Whether just these two, the very same, were held against each other already.</summary>
    internal static bool Knows(KnowledgeBase under, KnowledgeBase club) => Known(under, club) is not null;

    /// <summary>Without listening to phrases, which takes the better part of a second.</summary>
    internal static ImmutableArray<Weakening> Shape(KnowledgeBase under, KnowledgeBase club) =>
        [.. SafetyEmergencies.Look(under, club), .. SafetyWords.Look(under, club), .. new SafetyStops(under, club).Look(), .. SafetyWork.Look(under, club)];

    private static Looked? Known(KnowledgeBase under, KnowledgeBase club) => Pairs.TryGetValue(club, out var looked) && ReferenceEquals(looked.Under, under) ? looked : null;

    private sealed record Looked(KnowledgeBase Under, ImmutableArray<Weakening> Weaker);
}

/// <summary>Something that a club has made less safe than the base.</summary>
/// <param name="Rule">The rule of the linter that is broken, R100 to R109.</param>
/// <param name="Key">The rule that is less safe now.</param>
/// <param name="What">One sentence.</param>
/// <param name="Mend">What to do instead.</param>
public sealed record Weakening(LintRule Rule, RuleKey Key, string What, string Mend)
{
    /// <summary>Rules of which a change may be the reason, besides <see cref="Key"/>.</summary>
    public ImmutableArray<RuleKey> Suspects { get; init; } = [];

    /// <summary>Two sentences for moderators.</summary>
    public override string ToString() => $"{What} {Mend}";
}
