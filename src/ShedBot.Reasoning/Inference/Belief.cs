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
    private readonly Func<int, int, double[]> answerChances;

    /// <param name="sets">Normalised; put in falling order of probability, ties by the fault indices.</param>
    /// <param name="answerChances">(check index, set index) to P(said state | that set, what is already known of the check's finding).</param>
    internal Belief(
        DiagnosticModel model,
        ImmutableArray<WeightedSet> sets,
        int largestSet,
        double leftOut,
        double logEvidence,
        Func<int, int, double[]> answerChances)
    {
        Model = model;
        Sets = sets;
        LargestSet = largestSet;
        LeftOut = leftOut;
        LogEvidence = logEvidence;
        this.answerChances = answerChances;
        marginals = new double[model.Faults.Length];
        foreach (var set in sets)
        {
            foreach (var fault in set.Faults) marginals[fault] += set.Probability;
        }
    }

    public DiagnosticModel Model { get; }

    /// <summary>Every set that kept any weight (below 1e-16 is none), most probable first.</summary>
    public ImmutableArray<WeightedSet> Sets { get; }

    /// <summary>The bound: the most faults that were allowed to be present at once.</summary>
    public int LargestSet { get; }

    /// <summary>An upper bound on how far any probability here can be from the unbounded one: m_k / Z_k, in [0, 1]; see the inference.</summary>
    public double LeftOut { get; }

    /// <summary>Natural logarithm of P(evidence | at least one fault present, bounded).</summary>
    public double LogEvidence { get; }

    /// <summary>P(fault present | evidence), in [0, 1]. Several faults may be present, so these need not add up to 1.</summary>
    public double Marginal(int fault) => marginals[fault];

    /// <inheritdoc cref="Marginal(int)"/>
    public double Marginal(string fault) => marginals[Model.FaultAt(fault)];

    /// <summary>P(said state | exactly the faults of the set, what is already known of the check's finding), one entry a state; 'not sure' is left out.</summary>
    public double[] AnswerChances(int check, int set) => answerChances(check, set);
}
