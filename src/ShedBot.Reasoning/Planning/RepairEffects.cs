using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>Works out what each usable repair does to each hypothesis, adding the half-mended sets to the list on the way.</summary>
internal sealed class RepairEffects(DiagnosticModel model, CostWeights weights, ImmutableDictionary<string, double> factors)
{
    /// <summary>One array of effects a repair, aligned with <paramref name="repairs"/>.</summary>
    public RepairEffect[][] Find(IReadOnlyList<Repair> repairs, HypothesisList hypotheses)
    {
        var success = repairs.Select(Successes).ToArray();
        var cheapest = Cheapest(repairs, success);
        var effects = repairs.Select(_ => new List<RepairEffect>()).ToArray();
        // The list grows while half-mended sets turn up.
        for (var h = 0; h < hypotheses.Count; h++)
        {
            for (var r = 0; r < repairs.Count; r++)
            {
                if (Effect(h, hypotheses, success[r], cheapest) is { } effect) effects[r].Add(effect);
            }
        }

        return [.. effects.Select(list => list.OrderBy(e => hypotheses[e.Hypothesis].Length).ToArray())];
    }

    private Dictionary<int, double> Successes(Repair repair)
    {
        var factor = factors.GetValueOrDefault(repair.Id, 1);
        var success = new Dictionary<int, double>();
        foreach (var fix in repair.Fixes) success[model.FaultAt(fix.Fault)] = fix.Success * factor;
        return success;
    }

    /// <summary>For each fault the least cost per success; without end when no repair here mends it.</summary>
    private double[] Cheapest(IReadOnlyList<Repair> repairs, Dictionary<int, double>[] success)
    {
        var cheapest = Enumerable.Repeat(double.PositiveInfinity, model.Faults.Length).ToArray();
        for (var r = 0; r < repairs.Count; r++)
        {
            var cost = Math.Max(weights.Total(repairs[r].Cost), 1e-9);
            foreach (var (fault, chance) in success[r]) cheapest[fault] = Math.Min(cheapest[fault], cost / chance);
        }

        return cheapest;
    }

    private static RepairEffect? Effect(int h, HypothesisList hypotheses, Dictionary<int, double> success, double[] cheapest)
    {
        var set = hypotheses[h];
        var touched = set.Where(success.ContainsKey).ToArray();
        if (touched.Length == 0) return null;
        if (set.Length == 1) return new RepairEffect(h, 1 - success[set[0]], success[set[0]], success[set[0]], null);

        var (stay, solve, moves) = (0.0, 0.0, new List<(int, double)>());
        for (var mended = 0; mended < 1 << touched.Length; mended++)
        {
            var chance = 1.0;
            for (var i = 0; i < touched.Length; i++)
                chance *= (mended >> i & 1) != 0 ? success[touched[i]] : 1 - success[touched[i]];
            if (mended == 0) stay = chance;
            else if (set.Where(f => !IsMended(f)).ToArray() is not { Length: > 0 } rest) solve = chance;
            else if (chance > 0) moves.Add((hypotheses.PlaceOf(rest), chance));

            bool IsMended(int fault) => Array.IndexOf(touched, fault) is var at and >= 0 && (mended >> at & 1) != 0;
        }

        return new RepairEffect(h, stay, solve, Share(set, touched, success, cheapest), moves.Count == 0 ? null : [.. moves]);
    }

    /// <summary>
    /// A set is solved only when all of it is mended, so each repair earns the part of the weight that its cost is of the whole:
    /// weight / (sum of costs) a minute for each. Where something in the set cannot be mended here, nobody earns anything.
    /// </summary>
    private static double Share(int[] set, int[] touched, Dictionary<int, double> success, double[] cheapest)
    {
        var whole = set.Sum(f => cheapest[f]);
        return double.IsInfinity(whole) ? 0 : touched.Sum(f => success[f] * cheapest[f]) / whole;
    }
}
