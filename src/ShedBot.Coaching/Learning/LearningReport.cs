using System.Collections.Immutable;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Learning;

/// <summary>What a club's closed cases would move, with the numbers. Names nobody.</summary>
/// <param name="Learnt">All moves together, ready to be laid over the rules.</param>
/// <param name="Moves">Odds first, then links, then repairs; the largest move first.</param>
/// <param name="Cases">How many cases were looked at, those that ended without a proof among them.</param>
/// <param name="Mended">How many of them were mended and stayed so.</param>
/// <param name="Members">Of how many members.</param>
public sealed record LearningReport(Learnt Learnt, ImmutableArray<LearntMove> Moves, int Cases, int Mended, int Members)
{
    /// <summary>How each kind of numbers stood the test on cases that were kept aside; none for a kind of which nothing would have moved.</summary>
    public ImmutableArray<LearningTest> Tests { get; init; } = [];
}

/// <summary>What kind of numbers.</summary>
public enum LearningKind
{
    /// <summary>How common causes are.</summary>
    Odds,

    /// <summary>How often causes show.</summary>
    Links,

    /// <summary>How often repairs help.</summary>
    Mends,
}

/// <summary>The test of one kind of numbers on cases of members that they were not learnt from.</summary>
/// <param name="Moved">So many numbers move.</param>
/// <param name="HeldBack">So many more would move by the counts alone, and stay as they are.</param>
/// <param name="Better">Of so many members the cases are foretold better than by the rules.</param>
/// <param name="Worse">Of so many worse.</param>
/// <param name="Says">The same for moderators.</param>
public sealed record LearningTest(LearningKind Kind, int Moved, int HeldBack, int Better, int Worse, string Says);

/// <summary>One number that moves.</summary>
/// <param name="Before">A chance, in (0, 1): of a fault once its commonest complaint is told; of a link or repair the one of its word.</param>
/// <param name="After">The same with what is learnt.</param>
/// <param name="Times">What the odds of a fault are multiplied with; 1 for links and repairs.</param>
/// <param name="Counted">In how many cases it was the cause, or seen, or mended: shared out where a case leaves it open, so not a whole number.</param>
/// <param name="Expected">In how many of these the rules expected it.</param>
/// <param name="Cases">How many cases bear on it.</param>
/// <param name="Mended">How many of these were mended and stayed so.</param>
/// <param name="Members">Of how many members.</param>
/// <param name="Says">A sentence or two for moderators, with the numbers.</param>
public sealed record LearntMove(
    LearningTarget Target, double Before, double After, double Times, double Counted, double Expected, int Cases, int Mended, int Members, string Says);
