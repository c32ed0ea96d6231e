using System.Globalization;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Simulation.Learning;

/// <summary>How far the numbers that moved are from the truth, before and after.</summary>
internal static class Distance
{
    public static string Of(Learnt truth, Learnt learnt) => string.Create(
        CultureInfo.InvariantCulture,
        $"odds {Root(learnt.Odds.Select(o => Math.Log(truth.TimesOf(o.Fault))))} to {Root(learnt.Odds.Select(o => Math.Log(truth.TimesOf(o.Fault) / o.Times)))} (log, {learnt.Odds.Length} moved); {learnt.Links.Length} links and {learnt.Mends.Length} repairs moved");

    /// <summary>The root of the mean square.</summary>
    private static string Root(IEnumerable<double> values) =>
        Math.Sqrt(values.Select(v => v * v).DefaultIfEmpty(0).Average()).ToString("0.00", CultureInfo.InvariantCulture);
}
