using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching;

/// <summary>Tries changed rules beside those that stand, and shows what came of it.</summary>
public interface ITrials
{
    /// <param name="cases">The club's closed cases.</param>
    /// <param name="progress">How far it is, 0 to 1; or null.</param>
    Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct);

    /// <summary>What a report says, in words.</summary>
    /// <param name="report">As <see cref="TryAsync"/> gave it.</param>
    /// <param name="old">For names only.</param>
    /// <param name="changed">For names only.</param>
    ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed);

    /// <summary>All that a report measured, for whoever wants to see it; empty where there is nothing more to see.</summary>
    ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => [];
}

/// <param name="Report">As its own text.</param>
/// <param name="Lost">What of safety would be lost, each in a sentence; not empty: it must not be published.</param>
/// <param name="IsWorse">Whether it came out surely worse in something that counts, be it better in others or not.</param>
public sealed record TriedOut(string Report, ImmutableArray<string> Lost, bool IsWorse = false);
