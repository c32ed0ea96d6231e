namespace ShedBot.Knowledge.Compiling;

/// <summary>The few figures that rules do not state.</summary>
/// <remarks>All are our own choice; common practice, no source, unless one is named.</remarks>
/// <param name="HelpCost">
/// What handing over to a human costs, in minutes; above 0. It sets how long the coach persists: 180 is about what a club
/// evening and the wait for it are worth to a rider.
/// </param>
/// <param name="OtherShare">
/// The share of 'something that no rule lists' among single causes, in (0, 0.5). Diagnosis text books advise 2 to 10 %
/// so that a listed fault need not take the blame for what is not listed.
/// </param>
/// <param name="StateLeak">Chance of each abnormal state of a finding with nothing in the rules to cause it, when the rule does not say; in (0, 0.1].</param>
/// <param name="ComplaintLeak">The same for a complaint.</param>
public sealed record CompileOptions(
    double HelpCost = 180, double OtherShare = 0.04, double StateLeak = 0.01, double ComplaintLeak = 0.005)
{
    public static CompileOptions Default { get; } = new();
}
