using System.Globalization;
using System.Text;

using ShedBot.Coaching.Simulating;
namespace ShedBot.Simulation.Report;

/// <summary>A summary as a table that can be pasted into a page (Markdown).</summary>
internal static class SummaryText
{
    public static string Of(Summary s, string command)
    {
        var text = new StringBuilder();
        Line(text, $"{s.Plan.Riders} riders, seed {s.Plan.Seed}, rules {s.KnowledgeVersion}: {s.SeveralFaults} with more than one fault, {s.BeyondTheCoach} with nothing that a coached repair mends.");
        Line(text, $"Again: {command}");
        Line(text, $"In brackets: 95 % intervals (Wilson for shares, bootstrap for means).");
        Line(text, $"");
        Line(text, $"| what | coached | fixed order of repairs | random order of steps |");
        Line(text, $"| --- | --: | --: | --: |");
        Row(text, "right cause led, and mended", s, c => c.RightCause is { } f ? Share(f) : "-");
        Row(text, "right cause named by the repair", s, c => c.NamedByRepair is { } f ? Share(f) : "-");
        Row(text, "mended", s, c => Share(c.Mended));
        Row(text, "right end: mended, or rightly stopped or handed over", s, c => Share(c.RightEnd));
        Row(text, "taken for mended, and is not", s, c => Share(c.TakenForMended));
        Row(text, "handed to a human", s, c => Share(c.HandedOver));
        Row(text, "handed to a human with a right cause leading", s, c => c.HandedOverKnowing is { } f ? Share(f) : "-");
        Row(text, "told to stop riding, rightly", s, c => Share(c.StoppedRightly));
        Row(text, "told to stop riding, wrongly", s, c => Share(c.StoppedWrongly));
        Row(text, "questions and checks: median / 90th", s, c => Number($"{c.AskedMedian:0} / {c.AskedNinetieth:0}"));
        Row(text, "repairs tried, mean", s, c => Mean(c.Repairs, "0.00"));
        Row(text, "rider's minutes: median / 90th", s, c => Number($"{c.MinutesMedian:0} / {c.MinutesNinetieth:0}"));
        Row(text, "rider's minutes, mean", s, c => Mean(c.Minutes, "0.0"));
        Row(text, "cost in minutes, help included, mean", s, c => Mean(c.Cost, "0.0"));
        Line(text, $"");
        Line(text, $"Coached cost over the fixed order: {Mean(s.CostToFixedOrder, "0.000")}; over the random order: {Mean(s.CostToRandomOrder, "0.000")}.");
        Calibration(text, s);
        Confused(text, s);
        return text.ToString();
    }

    private static void Calibration(StringBuilder text, Summary s)
    {
        Line(text, $"");
        Line(text, $"| belief | riders | Brier, leading cause | Brier, all causes | log score | calibration error |");
        Line(text, $"| --- | --: | --: | --: | --: | --: |");
        foreach (var (name, c) in new[] { ("after the complaint", s.AfterComplaint), ("before the first repair", s.BeforeRepair), ("always the priors", s.PriorsOnly) })
        {
            if (c is not null)
                Line(text, $"| {name} | {c.Count} | {Mean(c.Leading, "0.000")} | {Mean(c.AllCauses, "0.000")} | {c.Log:0.000} | {c.Error:0.000} |");
        }
    }

    private static void Confused(StringBuilder text, Summary s)
    {
        if (s.Confusion.IsEmpty) return;
        Line(text, $"");
        Line(text, $"| fault, alone | riders | right cause | mended | human | stopped | not mended | asked, median | repairs, mean | taken for |");
        Line(text, $"| --- | --: | --: | --: | --: | --: | --: | --: | --: | --- |");
        foreach (var r in s.Confusion)
        {
            var taken = string.Join(", ", r.TakenFor.Take(3).Select(t => $"{t.Cause} {t.Count}"));
            Line(text, $"| {r.Fault} | {r.Riders} | {r.RightCause} | {r.Mended} | {r.HandedOver} | {r.Stopped} | {r.TakenForMended} | {r.AskedMedian:0} | {r.RepairsMean:0.0} | {taken} |");
        }
    }

    private static void Row(StringBuilder text, string name, Summary s, Func<Column, string> cell) =>
        Line(text, $"| {name} | {cell(s.Coached)} | {cell(s.FixedOrder)} | {cell(s.RandomOrder)} |");

    private static string Share(Figure f) => Number($"{100 * f.Value:0.0} % ({100 * f.Low:0.0} to {100 * f.High:0.0})");

    private static string Mean(Figure f, string format) =>
        $"{f.Value.ToString(format, CultureInfo.InvariantCulture)} ({f.Low.ToString(format, CultureInfo.InvariantCulture)} to {f.High.ToString(format, CultureInfo.InvariantCulture)})";

    private static string Number(FormattableString text) => FormattableString.Invariant(text);

    private static void Line(StringBuilder text, FormattableString line) => text.Append(FormattableString.Invariant(line)).Append('\n');
}
