using System.Numerics;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>
/// The least expected cost with several faults at once, by plain recursion over every order of every step: nothing remembered, nothing cut off,
/// straight from the model. For models of three checks and three repairs at most.
/// </summary>
internal sealed class FaultSetOracle(DiagnosticModel model)
{
    private readonly StateChances[] chances = [.. model.Checks.Select(c => new StateChances(model, model.FindingAt(c.Finding)))];

    /// <summary>P(set) by bit set of faults: independent faults, at least one there.</summary>
    public double[] Prior()
    {
        var weights = new double[1 << model.Faults.Length];
        for (var set = 1; set < weights.Length; set++)
        {
            weights[set] = 1;
            for (var f = 0; f < model.Faults.Length; f++)
                weights[set] *= (set >> f & 1) != 0 ? model.Faults[f].Prior : 1 - model.Faults[f].Prior;
        }

        var total = weights.Sum();
        return [.. weights.Select(w => w / total)];
    }

    public double Least() => Least(Prior(), [.. model.Checks], [.. model.Repairs], []);

    private double Least(double[] weights, List<Check> checks, List<Repair> repairs, HashSet<string> open)
    {
        var total = weights.Sum();
        var best = total * model.HelpCost;
        foreach (var check in checks)
        {
            var prepared = chances[model.CheckAt(check.Id)];
            var cost = total * Cost(check.Cost, check.Cover, open);
            for (var said = 0; said < prepared.States; said++)
                cost += Least(Said(weights, check, prepared, said), [.. checks.Where(c => c != check)], repairs, With(open, check.Cover));
            best = Math.Min(best, cost);
        }

        foreach (var repair in repairs)
        {
            var cost = total * Cost(repair.Cost, repair.Cover, open);
            cost += Least(Failed(weights, repair), checks, [.. repairs.Where(r => r != repair)], With(open, repair.Cover));
            best = Math.Min(best, cost);
        }

        return best;
    }

    private double Cost(StepCost cost, string? cover, HashSet<string> open) => cost.Minutes
        + (cover is null || open.Contains(cover) ? 0 : model.Covers[model.CoverAt(cover)].OpeningCost.Minutes);

    private static HashSet<string> With(HashSet<string> open, string? cover) => cover is null ? open : [.. open, cover];

    private static double[] Said(double[] weights, Check check, StateChances prepared, int said)
    {
        var after = new double[weights.Length];
        for (var set = 1; set < weights.Length; set++)
        {
            var truths = prepared.Given([.. Enumerable.Range(0, BitOperations.Log2((uint)set) + 1).Where(f => (set >> f & 1) != 0)]);
            for (var truth = 0; truth < truths.Length; truth++)
                after[set] += weights[set] * truths[truth] * AnswerChance.Of(check.Error, truths.Length, truth, said);
        }

        return after;
    }

    /// <summary>One fault after the other is mended with its chance; the empty set is where the trouble is over.</summary>
    private double[] Failed(double[] weights, Repair repair)
    {
        var after = (double[])weights.Clone();
        foreach (var fix in repair.Fixes)
        {
            var bit = 1 << model.FaultAt(fix.Fault);
            for (var set = 1; set < after.Length; set++)
            {
                if ((set & bit) == 0) continue;
                after[set ^ bit] += after[set] * fix.Success;
                after[set] *= 1 - fix.Success;
            }
        }

        after[0] = 0;
        return after;
    }
}
