using System.Globalization;
using System.Text;
using ShedBot.Coaching.Simulating;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Simulation.Learning;

/// <summary>What a study found, as tables for the documentation.</summary>
internal static class StudyText
{
    private const int Bins = 5;

    public static string Of(StudyPlan plan, IReadOnlyCollection<StageResult> results, string version, string again)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Clubs with seeds {string.Join(", ", plan.Seeds)}, {plan.Riders} fresh riders each at every stage, rules {version}.  \n");
        text.Append(CultureInfo.InvariantCulture, $"Again: `{again}`  \n");
        text.Append("In brackets: 95 % bootstrap intervals over riders, clubs put together; ratios are of the same riders before anything was learnt.  \n");
        text.Append("Where nothing moved in a club, its riders are coached as before to the letter, and were not ridden again.\n\n");
        Row(text, "cases", "numbers moved, by club (held back)", "cost, mean", "cost to before", "right cause led, and mended", "mended", "Brier, all causes, after the complaint", "the same before the first repair", "log score after the complaint", "calibration error after the complaint", "odds of the falsely blamed cause");
        Row(text, "--:", "--:", "--:", "--:", "--:", "--:", "--:", "--:", "--:", "--:", "--:");
        var stages = results.Select(r => r.Cases).Distinct().ToList();
        var before = Rides(results, 0);
        foreach (var stage in stages)
        {
            var (of, rides) = (results.Where(r => r.Cases == stage).ToList(), Rides(results, stage));
            double[] after = [.. rides.Select(r => r.AfterComplaint).Where(double.IsFinite)], repair = [.. rides.Select(r => r.BeforeRepair).Where(double.IsFinite)];
            Row(
                text,
                stage < 0 ? "the truth known" : stage.ToString(CultureInfo.InvariantCulture),
                stage < 0 ? "-" : string.Join(", ", of.Select(r => $"{r.Moves} ({r.HeldBack})")),
                Shown(Figure.Mean([.. rides.Select(r => r.Cost)], 1), "0.0"),
                Ratio(of, rides, before),
                Percent(Figure.Share(rides.Count(r => r.RightCause), rides.Count)),
                Percent(Figure.Share(rides.Count(r => r.Mended), rides.Count)),
                Shown(Figure.Mean(after, 1), "0.000"),
                Shown(Figure.Mean(repair, 1), "0.000"),
                rides.Select(r => r.LogAfter).Where(double.IsFinite).Average().ToString("0.000", CultureInfo.InvariantCulture),
                Scores.CalibrationError([.. rides.Where(r => double.IsFinite(r.Lead)).Select(r => new Forecast(r.Lead, r.LeadIsThere))], Bins).ToString("0.000", CultureInfo.InvariantCulture),
                stage < 0 ? "-" : string.Join(", ", of.Select(r => $"x {r.BlamedTimes.ToString("0.00", CultureInfo.InvariantCulture)}")));
        }

        text.Append("\nCost to before, club by club:\n\n");
        Row(text, ["seed", .. stages.Where(s => s != 0).Select(s => s < 0 ? "the truth known" : $"{s} cases")]);
        Row(text, ["--:", .. stages.Where(s => s != 0).Select(_ => "--:")]);
        foreach (var club in results.GroupBy(r => r.Seed))
            Row(text, [$"{club.Key}", .. stages.Where(s => s != 0).Select(s => Ratio([club.First(r => r.Cases == s)], club.First(r => r.Cases == s).Rides, club.First(r => r.Cases == 0).Rides))]);
        return text.ToString();
    }

    /// <summary>What nothing was changed for cost exactly the same.</summary>
    private static string Ratio(IReadOnlyCollection<StageResult> of, IReadOnlyCollection<StudyRide> rides, IReadOnlyCollection<StudyRide> before) =>
        of.All(r => r.Cases >= 0 && r.Moves == 0) ? "1" : Shown(Figure.Ratio([.. rides.Select(r => r.Cost)], [.. before.Select(r => r.Cost)], 1), "0.000");

    private static List<StudyRide> Rides(IEnumerable<StageResult> results, int stage) => [.. results.Where(r => r.Cases == stage).SelectMany(r => r.Rides)];

    private static void Row(StringBuilder text, params string[] cells) => text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");

    private static string Shown(Figure figure, string format) =>
        $"{figure.Value.ToString(format, CultureInfo.InvariantCulture)} ({figure.Low.ToString(format, CultureInfo.InvariantCulture)} to {figure.High.ToString(format, CultureInfo.InvariantCulture)})";

    private static string Percent(Figure figure) => string.Create(CultureInfo.InvariantCulture, $"{figure.Value * 100:0.0} % ({figure.Low * 100:0.0} to {figure.High * 100:0.0})");
}
