using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>A set of faults that are all present, and nothing else is, with its probability.</summary>
/// <param name="Faults">Indices into the model's faults, ascending; never empty.</param>
/// <param name="Probability">P(exactly these | evidence, at least one fault, not more than the bound); in (0, 1].</param>
public readonly record struct WeightedSet(ImmutableArray<int> Faults, double Probability);

/// <summary>What is believed about the machine as it is now, exact over every set of faults up to a bounded size.</summary>
public sealed class Belief
{
    private readonly double[] marginals;
    private readonly AnswerOutlook outlook;
    private readonly Lazy<double> leftOut;
    private readonly Lazy<ImmutableArray<WeightedSet>> listed;

    /// <param name="sets">Normalised.</param>
    /// <param name="leftOut">Worked out when first asked for.</param>
    internal Belief(DiagnosticModel model, BelievedSets sets, int largestSet, Func<double> leftOut, double logEvidence, AnswerOutlook outlook)
    {
        Model = model;
        Believed = sets;
        LargestSet = largestSet;
        LogEvidence = logEvidence;
        this.outlook = outlook;
        this.leftOut = new Lazy<double>(leftOut);
        listed = new Lazy<ImmutableArray<WeightedSet>>(sets.All);
        marginals = sets.Marginals(model.Faults.Length);
    }

    public DiagnosticModel Model { get; }

    /// <summary>Every set that kept any weight (below 1e-16 is none), most probable first.</summary>
    public ImmutableArray<WeightedSet> Sets => listed.Value;

    /// <summary>The same sets, not listed yet.</summary>
    internal BelievedSets Believed { get; }

    /// <summary>The bound: the most faults that were allowed to be present at once.</summary>
    public int LargestSet { get; }

    /// <summary>An upper bound on how far any probability here can be from the unbounded one: m_k / Z_k, in [0, 1]; see the inference.</summary>
    public double LeftOut => leftOut.Value;

    /// <summary>Natural logarithm of P(evidence | at least one fault present, bounded).</summary>
    public double LogEvidence { get; }

    /// <summary>P(fault present | evidence), in [0, 1]. Several faults may be present, so these need not add up to 1.</summary>
    public double Marginal(int fault) => marginals[fault];

    /// <inheritdoc cref="Marginal(int)"/>
    public double Marginal(string fault) => marginals[Model.FaultAt(fault)];

    /// <summary>P(said state | exactly the faults of the set, what is already known of the check's finding), one entry a state; 'not sure' is left out.</summary>
    public double[] AnswerChances(int check, int set) => AnswerChances(check, Sets[set].Faults.AsSpan());

    /// <param name="faults">Indices into the model's faults, each once.</param>
    internal double[] AnswerChances(int check, ReadOnlySpan<int> faults) => outlook.Chances(check, faults);
}
