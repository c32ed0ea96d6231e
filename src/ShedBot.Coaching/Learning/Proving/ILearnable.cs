using ShedBot.Coaching.Learning.Counting;

namespace ShedBot.Coaching.Learning.Proving;

/// <summary>One kind of numbers that can be learnt: odds of causes, strengths, or chances of repairs. Each has a fixed list of them.</summary>
internal interface ILearnable
{
    /// <summary>The numbers without anything learnt.</summary>
    double[] Unlearnt { get; }

    /// <summary>By number: whether enough cases bear on it, and it may move.</summary>
    bool[] Free { get; }

    /// <summary>What the cases make of the numbers, within the limits.</summary>
    /// <param name="sampleSize">What the rules' own word counts like.</param>
    /// <param name="fold">The part of the cases that is not looked at.</param>
    /// <param name="free">Which numbers may move; no others than the free ones.</param>
    double[] Learn(double sampleSize, int fold, bool[] free);

    /// <summary>ln P(a case's story, given what the rider came with) by these numbers, less the same by the unlearnt ones.</summary>
    /// <param name="fold">The part that the case is in.</param>
    Func<WeighedCase, double> Gain(double[] numbers, int fold);
}
