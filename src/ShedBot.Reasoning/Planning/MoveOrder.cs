using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>Puts steps in order of expected cost; ties go to less hazard, then less own cost, then check before repair before help, then the id.</summary>
internal sealed class MoveOrder(PlanTable table) : IComparer<Move>
{
    /// <summary>Expected costs that differ by less than this part of the smaller one are a tie: the sums behind them are rounded.</summary>
    private const double Tie = 1e-10;

    public int Compare(Move x, Move y)
    {
        var ((hazard, cost), (otherHazard, otherCost)) = (Own(x), Own(y));
        var order = hazard.CompareTo(otherHazard);
        if (order == 0) order = cost.CompareTo(otherCost);
        if (order == 0) order = x.Kind.CompareTo(y.Kind);
        return order != 0 ? order : x.Index.CompareTo(y.Index);
    }

    /// <summary>The best step.</summary>
    public ScoredMove Best(List<ScoredMove> scores)
    {
        var least = double.PositiveInfinity;
        foreach (var score in scores) least = Math.Min(least, score.Cost);
        ScoredMove? best = null;
        foreach (var score in scores)
        {
            if (score.Cost - least > Tie * least) continue;
            if (best is not { } held || Compare(score.Move, held.Move) < 0) best = score;
        }

        return best!.Value;
    }

    /// <summary>All steps, the best one first.</summary>
    public List<ScoredMove> Sorted(List<ScoredMove> scores)
    {
        var best = Best(scores);
        return [best, .. scores.Where(s => s.Move != best.Move).OrderBy(s => Ties.Key(s.Cost)).ThenBy(s => s.Move, this)];
    }

    private (Hazard Hazard, double Cost) Own(Move move) => move.Kind switch
    {
        MoveKind.Check => (table.Checks[move.Index].Hazard, table.Checks[move.Index].Cost),
        MoveKind.Repair => (table.Repairs[move.Index].Hazard, table.Repairs[move.Index].Cost),
        _ => (Hazard.None, table.HelpCost),
    };
}
