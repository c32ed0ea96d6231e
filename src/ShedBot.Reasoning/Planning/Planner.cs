using System.Collections.Immutable;

namespace ShedBot.Reasoning.Planning;

/// <summary>Chooses the next step: the check, the repair or the call for help after which the case is expected to end at the least cost.</summary>
/// <remarks>
/// <para>Rules of the game: a check is answered once; a repair is done once and the whole machine tried after it; the trouble is over when no fault
/// is left; a cover is opened on first use and stays open; help ends the case.</para>
/// <para>Small problems of one fault at a time are planned exactly. For the rest every step is tried one step ahead and then valued by the best of
/// repairs only, and any one check followed by repairs only, on the leading hypotheses and the most promising steps.</para>
/// <para>Pure and deterministic: the same request has the same decision.</para>
/// </remarks>
public static class Planner
{
    public static Decision Decide(PlanRequest request, PlannerOptions? options = null)
    {
        options ??= new PlannerOptions();
        var (table, whole) = PlanTableBuilder.FromRequest(request, options);
        var scores = new List<ScoredMove>();
        var exact = whole && ExactPlan.Serves(table, options.ExactSituations);
        if (exact) new ExactPlan(table).Score(table.Weights, table.Start, 0, scores);
        else new DeeperLook(table, options.Deepened).Score(table.Weights, table.Start, scores);
        return Decided(table, scores, exact ? PlanMethod.Exact : PlanMethod.LookAhead);
    }

    private static Decision Decided(PlanTable table, List<ScoredMove> scores, PlanMethod method)
    {
        var total = PlanTable.Sum(table.Weights);
        var considered = new MoveOrder(table).Sorted(scores)
            .Select(s => new ConsideredStep(Step(table, s.Move), s.Cost / total)).ToImmutableArray();
        var plan = new RepairsPlan(table);
        plan.Value(table.Weights, table.Start);
        var order = ImmutableArray.CreateBuilder<string>();
        foreach (var repair in plan.Order) order.Add(table.Repairs[repair].Id);
        return new Decision(considered[0].Step, considered[0].ExpectedCost, considered, method, order.ToImmutable());
    }

    private static NextStep Step(PlanTable table, Move move) => move.Kind switch
    {
        MoveKind.Check => new DoCheck(table.Checks[move.Index].Id),
        MoveKind.Repair => new DoRepair(table.Repairs[move.Index].Id),
        _ => new GetHelp(),
    };
}
