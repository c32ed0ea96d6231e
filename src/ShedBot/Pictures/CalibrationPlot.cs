using ScottPlot;
using ShedBot.Coaching.Learning.Reports;

namespace ShedBot.Pictures;

/// <summary>
/// Paints how often the cause that led was right against the chance that it was given, as PNG. Made for a telephone that shows it a third as wide. The
/// plot's coordinates are the pixels of the sheet, with y growing downwards below 0.
/// </summary>
/// <param name="face">The name under which the typeface is known.</param>
internal sealed class CalibrationPlot(Plot plot, Palette colours, string face)
{
    public const int Width = 1080, Height = 1300;

    private const float Margin = 40, Heading = 46, Small = 30, Mark = 34, Halo = 5;

    /// <summary>The square in which chances stand, both from 0 to 100 %.</summary>
    private const float Left = 150, Top = 330, Side = 820;

    private static readonly (string Name, MarkerShape Shape)[] Points =
        [("right after the complaint", MarkerShape.FilledCircle), ("when the first repair was shown", MarkerShape.FilledSquare)];

    public static byte[] Paint(CalibrationReport report, Palette colours, PlainFace face)
    {
        using var plot = new Plot();
        new CalibrationPlot(plot, colours, face.Regular).Draw(report);
        plot.Axes.SetLimits(0, Width, -Height, 0);
        return plot.GetImageBytes(Width, Height, ImageFormat.Png);
    }

    private void Draw(CalibrationReport report)
    {
        plot.Layout.Frameless();
        plot.HideGrid();
        plot.FigureBackground.Color = plot.DataBackground.Color = Color.FromHex(colours.Ground);
        Write("Could its chances be", Margin, 62, Heading, colours.Ink, Alignment.MiddleLeft, bold: true);
        Write("taken at their word?", Margin, 116, Heading, colours.Ink, Alignment.MiddleLeft, bold: true);
        Write($"{report.Cases} mended {(report.Cases == 1 ? "case" : "cases")}; bars are 95 % intervals", Margin, 172, Small, colours.Pale, Alignment.MiddleLeft);
        for (var i = 0; i < Points.Length; i++)
        {
            var y = 226 + (i * 48);
            Shape(Points[i].Shape, Margin + 20, y, Colour(i));
            Write(Points[i].Name, Margin + 56, y, Small, colours.Pale, Alignment.MiddleLeft);
        }

        Frame();
        Series(report.AfterComplaint, 0);
        Series(report.BeforeRepair, 1);
    }

    private void Frame()
    {
        for (var tenth = 0; tenth <= 10; tenth += 2)
        {
            var share = tenth / 10f;
            Line(X(0), Y(share), X(1), Y(share), 2, colours.Rule, LinePattern.Solid);
            Line(X(share), Y(0), X(share), Y(1), 2, colours.Rule, LinePattern.Solid);
            Write($"{tenth * 10} %", X(0) - 14, Y(share), Small, colours.Pale, Alignment.MiddleRight);
            Write($"{tenth * 10}", X(share), Y(0) + 34, Small, colours.Pale, Alignment.MiddleCenter);
        }

        Line(X(0), Y(0), X(1), Y(1), 4, colours.Rest, LinePattern.Dashed);
        Write("how often it was right, up; the chance it gave, across", Margin, Y(0) + 84, Small, colours.Ink, Alignment.MiddleLeft);
        Write("On the dashed line: as often right as it said.", Margin, Y(0) + 128, Small, colours.Pale, Alignment.MiddleLeft);
    }

    private void Series(CalibrationPoint point, int at)
    {
        var (colour, aside) = (Colour(at), at == 0 ? -4f : 4f);
        foreach (var (bin, next) in point.Bins.Zip(point.Bins.Skip(1)))
            Line(X(bin.Said) + aside, Y(bin.CameTrue.Value), X(next.Said) + aside, Y(next.CameTrue.Value), 3, colour, LinePattern.Solid);
        foreach (var bin in point.Bins)
        {
            var x = X(bin.Said) + aside;
            Line(x, Y(bin.CameTrue.Low), x, Y(bin.CameTrue.High), 5, colour, LinePattern.Solid);
            Shape(Points[at].Shape, x, Y(bin.CameTrue.Value), colour);
        }
    }

    private string Colour(int at) => at == 0 ? colours.Expected : colours.Due;

    private static float X(double chance) => Left + ((float)chance * Side);

    private static float Y(double share) => Top + ((1 - (float)share) * Side);

    private void Shape(MarkerShape shape, float x, float y, string colour)
    {
        plot.Add.Marker(x, -y, shape, Mark + (2 * Halo), Color.FromHex(colours.Ground));
        plot.Add.Marker(x, -y, shape, Mark, Color.FromHex(colour));
    }

    private void Line(float x1, float y1, float x2, float y2, float width, string colour, LinePattern pattern)
    {
        var line = plot.Add.Line(x1, -y1, x2, -y2);
        (line.LineWidth, line.LineColor, line.LinePattern, line.MarkerSize) = (width, Color.FromHex(colour), pattern, 0);
    }

    private void Write(string text, float x, float y, float size, string colour, Alignment alignment, bool bold = false)
    {
        // The library centres the box of a line, in which letters stand a little high.
        var label = plot.Add.Text(text, x, -y - (size * 0.1f));
        (label.LabelFontName, label.LabelFontSize, label.LabelBold, label.LabelFontColor, label.Alignment) = (face, size, bold, Color.FromHex(colour), alignment);
    }
}
