using System.Collections.Immutable;
using ScottPlot;

namespace ShedBot.Simulation.Report;

/// <summary>Draws how often the leading cause was right against the chance that it was given. On the diagonal beliefs can be taken at their word.</summary>
internal static class CalibrationPicture
{
    private const int Width = 900, Height = 720;

    /// <param name="path">Ends in .png or .svg.</param>
    /// <exception cref="IOException">The disk refuses.</exception>
    public static void Save(Summary summary, string path)
    {
        using var plot = new Plot();
        var diagonal = plot.Add.Line(0, 0, 1, 1);
        diagonal.LineColor = Colors.Gray;
        diagonal.LinePattern = LinePattern.Dashed;
        diagonal.LegendText = "said = came true";
        Draw(plot, summary.AfterComplaint, "after the complaint", Color.FromHex("#1f5fa8"), MarkerShape.FilledCircle);
        Draw(plot, summary.BeforeRepair, "before the first repair", Color.FromHex("#c2571a"), MarkerShape.FilledSquare);
        plot.Title(FormattableString.Invariant($"How often the leading cause was right ({summary.Plan.Riders} simulated riders, seed {summary.Plan.Seed})"));
        plot.XLabel("Chance that the coach gave the leading cause (mean of the bin)");
        plot.YLabel("Share in which it was there, with 95 % interval");
        plot.Axes.SetLimits(0, 1, 0, 1);
        plot.ShowLegend(Alignment.UpperLeft);
        if (path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)) plot.SaveSvg(path, Width, Height);
        else plot.SavePng(path, Width, Height);
    }

    private static void Draw(Plot plot, Calibrated? calibrated, string name, Color colour, MarkerShape marker)
    {
        if (calibrated is null) return;
        var bins = calibrated.Bins;
        var points = plot.Add.Scatter(Values(bins, b => b.Said), Values(bins, b => b.CameTrue.Value), colour);
        points.MarkerShape = marker;
        points.MarkerSize = 10;
        points.LineWidth = 2;
        points.LegendText = FormattableString.Invariant($"{name} (n = {calibrated.Count}, five bins of about equal count)");
        foreach (var bin in bins)
        {
            var bar = plot.Add.Line(bin.Said, bin.CameTrue.Low, bin.Said, bin.CameTrue.High);
            bar.LineColor = colour;
            bar.LineWidth = 1.5f;
        }
    }

    private static double[] Values(ImmutableArray<Bin> bins, Func<Bin, double> of) => [.. bins.Select(of)];
}
