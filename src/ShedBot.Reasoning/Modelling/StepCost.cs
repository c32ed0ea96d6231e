namespace ShedBot.Reasoning.Modelling;

/// <summary>What a step costs, in parts that are kept apart for display and joined by <see cref="CostWeights"/> for planning.</summary>
/// <param name="Minutes">Time, in minutes; 0 or more.</param>
/// <param name="Money">Parts to buy, in the club's currency units; 0 or more.</param>
/// <param name="Effort">Trouble of a kind that minutes do not show (awkward, dirty, needs a helper), 0 or more; 1 is worth a minute at weight 1.</param>
public readonly record struct StepCost(double Minutes, double Money = 0, double Effort = 0);

/// <summary>How the parts of a <see cref="StepCost"/> are joined to one number, in minutes.</summary>
/// <param name="MinutesPerMoney">How many minutes one unit of money is worth.</param>
/// <param name="MinutesPerEffort">How many minutes one unit of effort is worth.</param>
/// <param name="Floor">The least cost of any step, in minutes: reading and answering is never free.</param>
public sealed record CostWeights(double MinutesPerMoney = 1, double MinutesPerEffort = 1, double Floor = 0.3)
{
    public static CostWeights MinutesOnly { get; } = new(0, 0, 0);

    public double Total(StepCost cost) =>
        Math.Max(Floor, cost.Minutes + (MinutesPerMoney * cost.Money) + (MinutesPerEffort * cost.Effort));
}
