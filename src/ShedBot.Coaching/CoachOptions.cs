using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching;

/// <summary>How the coach goes about it.</summary>
public sealed record CoachOptions
{
    /// <summary>Steps above this hazard are not coached; what needs them goes to a human.</summary>
    public Hazard HazardLimit { get; init; } = Hazard.Medium;

    /// <summary>Hand over after so many questions and checks before the first repair; 4 to 40.</summary>
    public int MostQuestions { get; init; } = 14;

    /// <summary>Hand over after so many more since a repair that did not mend it; 2 to 40. What is not found by then is rarely found by asking.</summary>
    public int MostAfterRepair { get; init; } = 7;

    /// <summary>A fact of the bike is asked only among the first so many questions, and never more than <see cref="MostFacts"/>.</summary>
    public int FactsWithin { get; init; } = 4;

    /// <summary>The most facts of the bike that one case asks; 0 or more.</summary>
    public int MostFacts { get; init; } = 2;

    public CostWeights Weights { get; init; } = new();

    /// <summary>The human to whom a case is handed, as the club says it: "the workshop evening", "a helper".</summary>
    public string Helper { get; init; } = "one of the club's old hands";
}
