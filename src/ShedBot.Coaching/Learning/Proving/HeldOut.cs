namespace ShedBot.Coaching.Learning.Proving;

/// <summary>Lets learnt numbers pass only when they foretell cases of members they were not learnt from better than the rules do.</summary>
internal sealed class HeldOut(CaseFolds folds, LearningLimits limits)
{
    /// <summary>What the rules' own word may count like, in times of the sample size; the strongest last. With one still stronger hardly anything would move.</summary>
    private static readonly double[] Strengths = [0.1, 1 / 3.0, 1, 3];

    /// <summary>What a number must gain by itself, in standard errors.</summary>
    private const double AloneErrors = 1;

    private sealed record Trial(double SampleSize, double[][] ByFold, Proof Proof);

    public Tested Test(ILearnable kind)
    {
        if (!kind.Free.Contains(true)) return Held(kind, null, 0);
        if (limits.TimesLikelier <= 0)
        {
            var untested = kind.Learn(limits.SampleSize, CaseFolds.None, kind.Free);
            return new Tested(untested, Unmoved(kind), null, Moved(kind, untested), 0);
        }

        var chosen = Choose(kind);
        var wouldMove = Moved(kind, kind.Learn(limits.SampleSize, CaseFolds.None, kind.Free));
        if (!IsProved(chosen.Proof)) return Held(kind, chosen.Proof, wouldMove);

        var keep = new bool[kind.Free.Length];
        for (var at = 0; at < keep.Length; at++) keep[at] = kind.Free[at] && Prove(kind, Only(kind, chosen.ByFold, n => n == at)).IsAbove(AloneErrors);
        var kept = Only(kind, chosen.ByFold, n => keep[n]);
        var proof = Prove(kind, kept);
        if (!IsProved(proof)) return Held(kind, proof, wouldMove);
        var numbers = kind.Learn(chosen.SampleSize, CaseFolds.None, keep);
        var moved = Moved(kind, numbers);
        return new Tested(numbers, kept, proof, moved, Math.Max(0, wouldMove - moved));
    }

    /// <summary>
    /// The strength of the rules' own word that foretells best; and of those that are within one standard error of it, the strongest, which moves least
    /// (Breiman, Friedman, Olshen and Stone 1984, from memory).
    /// </summary>
    private Trial Choose(ILearnable kind)
    {
        var trials = Strengths.Select(s =>
        {
            var byFold = Enumerable.Range(0, folds.Count).Select(fold => kind.Learn(limits.SampleSize * s, fold, kind.Free)).ToArray();
            return new Trial(limits.SampleSize * s, byFold, Prove(kind, byFold));
        }).ToList();
        var best = trials.MaxBy(t => t.Proof.Sum)!;
        return trials.Last(t => !Less(best.Proof, t.Proof).IsAbove(1));
    }

    private static Proof Less(Proof one, Proof other) => new([.. one.ByMember.Zip(other.ByMember, (a, b) => a - b)], [.. one.ByFold.Zip(other.ByFold, (a, b) => a - b)]);

    private bool IsProved(Proof proof) => proof.IsAbove(limits.SureErrors) && proof.LogTimesLikelier >= Math.Log(limits.TimesLikelier);

    private Proof Prove(ILearnable kind, double[][] byFold)
    {
        var (members, parts) = (new SortedDictionary<int, double>(), new double[folds.Count]);
        var gains = byFold.Select(kind.Gain).ToArray();
        for (var at = 0; at < folds.Cases.Count; at++)
        {
            var (of, fold) = (folds.Cases[at], folds.FoldOf(at));
            var gain = of.Weight * gains[fold](of);
            members[of.Member] = members.GetValueOrDefault(of.Member) + gain;
            parts[fold] += gain;
        }

        return new Proof([.. members.Values], parts);
    }

    private static double[][] Only(ILearnable kind, double[][] byFold, Func<int, bool> which) =>
        [.. byFold.Select(numbers => numbers.Select((n, at) => which(at) ? n : kind.Unlearnt[at]).ToArray())];

    private double[][] Unmoved(ILearnable kind) => [.. Enumerable.Repeat(kind.Unlearnt, folds.Count)];

    private Tested Held(ILearnable kind, Proof? proof, int heldBack) => new(kind.Unlearnt, Unmoved(kind), proof, 0, heldBack);

    private static int Moved(ILearnable kind, double[] numbers) => numbers.Where((n, at) => n != kind.Unlearnt[at]).Count();
}
