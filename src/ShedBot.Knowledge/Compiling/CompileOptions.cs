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
/// <param name="ComplaintLeak">
/// The same for a complaint. Much lower: a trouble that nothing listed gives is what 'something else' stands for, and there are many
/// complaints to choose from, so a larger leak would drown the rare faults that give a complaint of their own.
/// </param>
/// <param name="FaultsAtOnce">
/// The most faults that a machine may have on average before anything is known of it, above 0. With 0.5, if faults come independently,
/// about one machine in four that has any has more than one: (1 - 1.5 exp(-0.5)) / (1 - exp(-0.5)) = 0.23.
/// </param>
/// <param name="Patience">
/// What every question costs on top of its minutes, as effort, 0 or more: a rider who is asked twenty short questions is worn out, though
/// each took half a minute.
/// </param>
public sealed record CompileOptions(
    double HelpCost = 180,
    double OtherShare = 0.04,
    double StateLeak = 0.01,
    double ComplaintLeak = 0.001,
    double FaultsAtOnce = 0.5,
    double Patience = 1)
{
    public static CompileOptions Default { get; } = new();

    /// <summary>What was counted from mended cases, to be laid over the words; null for nothing.</summary>
    public Learnt? Learnt { get; init; }
}
