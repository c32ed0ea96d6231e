using System.Collections.Immutable;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>Boils a planning problem down to a <see cref="PlanTable"/> of the hypotheses and steps that can matter.</summary>
internal static class PlanTableBuilder
{
    /// <summary>The most steps of one kind a table holds: each takes a bit in <see cref="StepsLeft"/>, and so may the cover it is behind.</summary>
    public const int MostSteps = 31;

    /// <summary>Exactly one fault is present, with chances in proportion to the priors, and nothing is known or left out.</summary>
    /// <exception cref="ArgumentException">The model has more than <see cref="MostSteps"/> checks, repairs or covers.</exception>
    public static PlanTable FromPriors(DiagnosticModel model, CostWeights weights)
    {
        if (model.Checks.Length > MostSteps || model.Repairs.Length > MostSteps || model.Covers.Length > MostSteps)
            throw new ArgumentException($"At most {MostSteps} checks, repairs and covers can be walked through.", nameof(model));
        var hypotheses = new HypothesisList();
        var total = model.Faults.Sum(f => f.Prior);
        for (var f = 0; f < model.Faults.Length; f++) hypotheses.Weigh(hypotheses.PlaceOf([f]), model.Faults[f].Prior / total);
        var covers = new CoverList(model, weights, []);
        var table = WithRepairs(model, weights, hypotheses, model.Repairs, ImmutableDictionary<string, double>.Empty, covers);
        return WithChecks(table, weights, covers, [.. model.Checks.Select(c => (c, Rows(model, c, hypotheses)))]);
    }

    /// <summary>The table of a request. Not whole when sets, checks or repairs that might have mattered were left out for speed.</summary>
    public static (PlanTable Table, bool Whole) FromRequest(PlanRequest request, PlannerOptions options)
    {
        var (belief, model) = (request.Belief, request.Belief.Model);
        var hypotheses = HypothesisList.Leading(belief, Math.Max(1, options.MostSets));
        var known = hypotheses.Count;
        var repairs = model.Repairs.Where(r => !request.RepairsClosed.Contains(r.Id) && InReach(r.Cover, r.Hazard)).ToArray();
        var (kept, all) = LeadingRepairs(request, hypotheses, repairs, Math.Clamp(options.MostRepairs, 0, MostSteps));
        var covers = new CoverList(model, request.Weights, request.OpenCovers);
        var table = WithRepairs(model, request.Weights, hypotheses, kept, request.RepairSuccessFactor, covers);

        var links = LinkedFaults(model, hypotheses);
        var checks = model.Checks
            .Where(c => !request.ChecksClosed.Contains(c.Id) && InReach(c.Cover, c.Hazard) && links.Contains(c.Finding))
            .Select(c => (Check: c, Chances: Rows(model, c, hypotheses, known, request)))
            .Where(c => CanMove(c.Chances))
            .ToArray();
        var screened = CheckScreen.Best(table, request.Weights, checks, Math.Clamp(options.MostChecks, 0, MostSteps));
        var whole = belief.Believed.Count <= options.MostSets && all && screened.Length == checks.Length;
        return (WithChecks(table, request.Weights, covers, screened), whole);

        bool InReach(string? cover, Hazard hazard) =>
            hazard <= request.HazardLimit && (cover is null || !request.ClosedCovers.Contains(cover));
    }

    private static (Repair[] Kept, bool All) LeadingRepairs(PlanRequest request, HypothesisList hypotheses, Repair[] repairs, int most)
    {
        var marginals = new double[request.Belief.Model.Faults.Length];
        var weights = hypotheses.Weights();
        for (var h = 0; h < weights.Length; h++)
        {
            foreach (var fault in hypotheses[h]) marginals[fault] += weights[h];
        }

        var useful = repairs.Select(r => (Repair: r, Rate: Rate(r))).Where(r => r.Rate > 0)
            .OrderByDescending(r => Ties.Key(r.Rate)).ThenBy(r => r.Repair.Id, StringComparer.Ordinal).Select(r => r.Repair).ToArray();
        return (useful[..Math.Min(most, useful.Length)], useful.Length <= most);

        double Rate(Repair repair) => repair.Fixes.Sum(f => f.Success * marginals[request.Belief.Model.FaultAt(f.Fault)])
            * request.RepairSuccessFactor.GetValueOrDefault(repair.Id, 1) / Math.Max(request.Weights.Total(repair.Cost), 1e-9);
    }

    private static HashSet<string> LinkedFaults(DiagnosticModel model, HypothesisList hypotheses)
    {
        var present = new HashSet<string>(StringComparer.Ordinal);
        for (var h = 0; h < hypotheses.Count; h++)
        {
            foreach (var fault in hypotheses[h]) present.Add(model.Faults[fault].Id);
        }

        return [.. model.Findings.Where(f => f.Links.Any(l => present.Contains(l.Fault))).Select(f => f.Id)];
    }

    private static PlanTable WithRepairs(
        DiagnosticModel model,
        CostWeights weights,
        HypothesisList hypotheses,
        IEnumerable<Repair> repairs,
        ImmutableDictionary<string, double> factors,
        CoverList covers)
    {
        var sorted = repairs.OrderBy(r => r.Hazard).ThenBy(r => weights.Total(r.Cost)).ThenBy(r => r.Id, StringComparer.Ordinal).ToArray();
        var effects = new RepairEffects(model, weights, factors).Find(sorted, hypotheses);
        var built = sorted.Select((r, i) => new PlanRepair(
            i, r.Id, weights.Total(r.Cost), covers.PlaceOf(r.Cover), r.Hazard, effects[i])).ToArray();
        foreach (var repair in built)
        {
            var changed = repair.Effects.SelectMany(e => (e.Moves ?? []).Select(m => m.To).Append(e.Hypothesis)).ToHashSet();
            foreach (var other in built)
            {
                if (other.Effects.Any(e => changed.Contains(e.Hypothesis))) repair.Rivals |= other.Bit;
            }
        }

        return new PlanTable(
            hypotheses.Weights(), [], built, covers.Costs, Behind(built, covers), model.HelpCost, new StepsLeft(0, All(built.Length), covers.Open),
            Enumerable.Range(0, hypotheses.Count).All(h => hypotheses[h].Length == 1));
    }

    private static ulong[] Behind(PlanRepair[] repairs, CoverList covers)
    {
        var behind = new ulong[covers.Costs.Length];
        foreach (var repair in repairs.Where(r => r.Cover >= 0)) behind[repair.Cover] |= repair.Bit;
        return behind;
    }

    private static PlanTable WithChecks(PlanTable table, CostWeights weights, CoverList covers, (Check Check, double[][] Chances)[] checks)
    {
        var sorted = checks.OrderBy(c => c.Check.Hazard).ThenBy(c => weights.Total(c.Check.Cost)).ThenBy(c => c.Check.Id, StringComparer.Ordinal).ToArray();
        var built = sorted.Select((c, i) => new PlanCheck(
            i, c.Check.Id, weights.Total(c.Check.Cost), covers.PlaceOf(c.Check.Cover), c.Check.Hazard, c.Check.Unsure, c.Chances, Same(c.Check))).ToArray();
        return table with
        {
            Checks = built,
            CoverCosts = covers.Costs,
            CoverRepairs = Behind(table.Repairs, covers),
            Start = new StepsLeft(All(built.Length), table.Start.Repairs, covers.Open),
        };

        ulong Same(Check check)
        {
            var same = 0UL;
            for (var i = 0; i < sorted.Length; i++) same |= sorted[i].Check.Finding == check.Finding ? 1UL << i : 0;
            return same;
        }
    }

    private static double[][] Rows(DiagnosticModel model, Check check, HypothesisList hypotheses, int known = 0, PlanRequest? request = null)
    {
        var prepared = model.ChancesOf(model.FindingAt(check.Finding));
        var index = request is null ? -1 : model.CheckAt(check.Id);
        var rows = Enumerable.Range(0, prepared.States).Select(_ => new double[hypotheses.Count]).ToArray();
        for (var h = 0; h < hypotheses.Count; h++)
        {
            // The belief knows what has been heard of the finding already; a set that is not in it can only be read off the model.
            var chances = h < known ? request!.Belief.AnswerChances(index, hypotheses[h]) : Said(prepared.Given(hypotheses[h]), check.Error);
            for (var v = 0; v < rows.Length; v++) rows[v][h] = chances[v];
        }

        return rows;
    }

    private static double[] Said(double[] truths, AnswerError error)
    {
        var said = new double[truths.Length];
        for (var v = 0; v < said.Length; v++)
        {
            for (var truth = 0; truth < said.Length; truth++)
                said[v] += truths[truth] * AnswerChance.Of(error, said.Length, truth, v);
        }

        return said;
    }

    private static bool CanMove(double[][] rows) =>
        rows.Any(row => row.Any(chance => Math.Abs(chance - row[0]) > 1e-12));

    private static ulong All(int count) => (1UL << count) - 1;
}
