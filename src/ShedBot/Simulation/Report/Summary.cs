using System.Collections.Immutable;
using ShedBot.Coaching.Simulating;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Calibration;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Simulation.Report;

/// <summary>All that is told of a run.</summary>
/// <param name="BeyondTheCoach">Riders whose trouble no coached repair can mend: a human is their right end.</param>
/// <param name="SeveralFaults">Riders with more than one fault.</param>
/// <param name="CostToFixedOrder">The coach's mean cost over that of the fixed order, on the same riders.</param>
/// <param name="PriorsOnly">The forecaster that says what the rules say before anything is heard.</param>
internal sealed record Summary(
    RunPlan Plan,
    string KnowledgeVersion,
    int BeyondTheCoach,
    int SeveralFaults,
    Column Coached,
    Column FixedOrder,
    Column RandomOrder,
    Figure CostToFixedOrder,
    Figure CostToRandomOrder,
    Calibrated? AfterComplaint,
    Calibrated? BeforeRepair,
    Calibrated? PriorsOnly,
    ImmutableArray<ConfusionRow> Confusion)
{
    /// <param name="limit">Repairs above this hazard are not coached.</param>
    public static Summary Of(KnowledgeBase knowledge, Hazard limit, RunPlan plan, IReadOnlyList<RiderRides> rides)
    {
        Ride[] coached = [.. rides.Select(r => r.Coached)], inOrder = [.. rides.Select(r => r.FixedOrder)], random = [.. rides.Select(r => r.RandomOrder)];
        double[] cost = [.. coached.Select(r => r.Cost)];
        var mendable = knowledge.Model.Repairs.Where(r => r.Hazard <= limit).SelectMany(r => r.Fixes).Select(f => f.Fault).ToHashSet(StringComparer.Ordinal);
        return new Summary(
            plan,
            knowledge.Version,
            coached.Count(r => r.BeyondTheCoach(mendable)),
            coached.Count(r => r.Rider.Machine.Faults.Count > 1),
            Column.Of(coached, mendable, plan.Seed, names: true),
            Column.Of(inOrder, mendable, plan.Seed, names: false),
            Column.Of(random, mendable, plan.Seed, names: false),
            Figure.Ratio(cost, [.. inOrder.Select(r => r.Cost)], plan.Seed),
            Figure.Ratio(cost, [.. random.Select(r => r.Cost)], plan.Seed),
            Calibrated.Of([.. coached.Select(r => r.AfterComplaint).OfType<Believed>()], plan.Seed),
            Calibrated.Of([.. coached.Select(r => r.BeforeRepair).OfType<Believed>()], plan.Seed),
            Calibrated.Of([.. Priors(knowledge, coached)], plan.Seed),
            plan.PerFault ? Report.Confusion.Of(coached) : []);
    }

    private static IEnumerable<Believed> Priors(KnowledgeBase knowledge, IEnumerable<Ride> rides)
    {
        var model = knowledge.Model;
        var belief = Inferrer.Infer(model, []);
        var lead = Enumerable.Range(0, model.Faults.Length).MaxBy(belief.Marginal);
        foreach (var ride in rides)
        {
            var all = model.Faults.Select((f, i) => new Forecast(Math.Clamp(belief.Marginal(i), 0, 1), ride.Rider.Machine.Faults.Contains(f.Id))).ToImmutableArray();
            yield return new Believed(all, all[lead]);
        }
    }
}
