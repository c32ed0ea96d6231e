using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>What a ride through a trouble has cost so far; the same rules of cost whoever proposes the steps.</summary>
public sealed class Bill(DiagnosticModel model, CostWeights weights)
{
    /// <summary>Minutes that reading and answering one question takes, whatever it asks; common practice, no source.</summary>
    public const double Reading = 0.5;

    private readonly HashSet<string> open = new(StringComparer.Ordinal);

    /// <summary>The rider's own minutes.</summary>
    public double Minutes { get; private set; }

    /// <summary>Minutes, money and effort joined, in minutes; with the price of help where it was needed.</summary>
    public double Cost { get; private set; }

    /// <summary>Questions and checks that were put.</summary>
    public int Asked { get; private set; }

    public int Repairs { get; private set; }

    public void Fact() => Read();

    public void Check(Check check)
    {
        Read();
        Open(check.Cover);
        Pay(check.Cost);
    }

    /// <summary>A repair and the trial after it, for which everything is put together again.</summary>
    public void Repair(Repair repair)
    {
        Repairs++;
        Open(repair.Cover);
        Pay(repair.Cost);
        open.Clear();
    }

    public void Help() => Cost += model.HelpCost;

    private void Read()
    {
        Asked++;
        Minutes += Reading;
        Cost += Reading;
    }

    private void Open(string? cover)
    {
        if (cover is not null && open.Add(cover)) Pay(model.Covers[model.CoverAt(cover)].OpeningCost);
    }

    private void Pay(StepCost cost)
    {
        Minutes += cost.Minutes;
        Cost += weights.Total(cost);
    }
}
