using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>What a ride through a trouble has cost so far; the same rules of cost whoever proposes the steps.</summary>
/// <param name="model">Whose costs are paid.</param>
/// <param name="also">Where the cost of a cover stands that the model does not know; null where there is none such.</param>
public sealed class Bill(DiagnosticModel model, CostWeights weights, DiagnosticModel? also = null)
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
        if (cover is null || !open.Add(cover)) return;
        var known = also is null || model.Covers.Any(c => c.Id == cover) ? model : also;
        Pay(known.Covers[known.CoverAt(cover)].OpeningCost);
    }

    private void Pay(StepCost cost)
    {
        Minutes += cost.Minutes;
        Cost += weights.Total(cost);
    }
}
