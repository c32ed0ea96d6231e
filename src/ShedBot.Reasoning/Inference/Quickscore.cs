using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>Exact sums over all sets of faults, whatever their size, for findings known for certain (Heckerman 1989, 'Quickscore', UAI 5).</summary>
/// <remarks>
/// Inclusion and exclusion over the subsets T of the findings that are there, with N the ones that are not:
/// P(F+, F-) = sum over T of (-1)^|T| prod over c in T + N of (1 - leak_c) prod over f of [p_f prod over c in T + N of (1 - s_cf) + 1 - p_f];
/// for P(f, F+, F-) the '1 - p_f' of that fault is dropped. The signs alternate and cancel, so no more than <see cref="MostPresent"/> findings
/// may be there. Independent of <see cref="Inferrer"/>: the two are held against each other.
/// </remarks>
public sealed class Quickscore
{
    /// <summary>Beyond this many findings that are there double precision runs out.</summary>
    public const int MostPresent = 15;

    private readonly double[] joint;
    private readonly double healthy;

    private Quickscore(double evidence, double healthy, double[] joint)
    {
        Evidence = evidence;
        this.healthy = healthy;
        this.joint = joint;
    }

    /// <summary>P(findings), no fault at all being one of the possibilities.</summary>
    public double Evidence { get; }

    /// <summary>P(fault | findings).</summary>
    public double Marginal(int fault) => joint[fault] / Evidence;

    /// <summary>P(fault | findings, at least one fault).</summary>
    public double MarginalGivenTrouble(int fault) => joint[fault] / (Evidence - healthy);

    /// <param name="present">Indices of yes/no findings that are there.</param>
    /// <param name="absent">Indices of yes/no findings that are not.</param>
    /// <exception cref="ArgumentException">Too many findings are there, or one has more than two states.</exception>
    public static Quickscore Sum(DiagnosticModel model, IReadOnlyList<int> present, IReadOnlyList<int> absent)
    {
        if (present.Count > MostPresent) throw new ArgumentException($"At most {MostPresent} findings may be there.", nameof(present));
        if (present.Concat(absent).Any(f => model.Findings[f].States.Length != 2))
            throw new ArgumentException("Every finding must be there or not: two states.", nameof(present));
        var chances = present.Concat(absent).Distinct().ToDictionary(f => f, f => new StateChances(model, f));
        var (evidence, healthy, joint) = (0.0, 0.0, new double[model.Faults.Length]);
        for (var subset = 0; subset < 1 << present.Count; subset++)
        {
            var quiet = absent.Concat(present.Where((_, i) => (subset >> i & 1) == 1)).Select(f => chances[f]).ToList();
            var leaks = quiet.Aggregate(int.IsEvenInteger(int.PopCount(subset)) ? 1.0 : -1.0, (product, f) => product * f.QuietWithoutCause);
            var with = model.Faults.Select((f, i) => quiet.Aggregate(f.Prior, (product, finding) => product * finding.Quiet(i))).ToArray();
            var sums = with.Select((w, i) => w + 1 - model.Faults[i].Prior).ToArray();
            var term = sums.Aggregate(leaks, (product, sum) => product * sum);
            evidence += term;
            healthy += model.Faults.Aggregate(leaks, (product, f) => product * (1 - f.Prior));
            for (var fault = 0; fault < joint.Length; fault++) joint[fault] += term / sums[fault] * with[fault];
        }

        return new(evidence, healthy, joint);
    }
}
