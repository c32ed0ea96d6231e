namespace ShedBot.Reasoning.Words;

/// <summary>One row of words for probabilities: Intelligence Community Directive 203, Analytic Standards (2015), its upper row.</summary>
public enum LikelihoodWord
{
    /// <summary>1 to 5 %.</summary>
    AlmostNoChance,

    /// <summary>5 to 20 %.</summary>
    VeryUnlikely,

    /// <summary>20 to 45 %.</summary>
    Unlikely,

    /// <summary>45 to 55 %.</summary>
    RoughlyEvenChance,

    /// <summary>55 to 80 %.</summary>
    Likely,

    /// <summary>80 to 95 %.</summary>
    VeryLikely,

    /// <summary>95 to 99 %.</summary>
    AlmostCertain,
}
