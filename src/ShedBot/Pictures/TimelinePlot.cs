using ScottPlot;
using ScottPlot.Hatches;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Pictures;

/// <summary>Paints a timeline as PNG. The plot's coordinates are the pixels of the sheet, with y growing downwards below 0.</summary>
/// <param name="face">The name under which the typeface is known.</param>
internal sealed class TimelinePlot(Plot plot, Palette colours, string face)
{
    /// <summary>Across; a telephone shows a third of it.</summary>
    private const float MarkSize = 30, BandHeight = 38, Halo = 4;

    /// <summary>Of the size of letters.</summary>
    private const float Sink = 0.1f;

    /// <summary>Makes a typeface known to the plots of this process, by the name of its file; to be called before the first picture with it.</summary>
    /// <returns>False when it has no letters, because the file is no typeface.</returns>
    public static bool Use(PlainFace face)
    {
        Fonts.AddFontFile(face.Regular, face.Regular, bold: false, italic: false);
        Fonts.AddFontFile(face.Regular, face.Bold, bold: true, italic: false);
        return Measure("Aa0", TimelineSheet.Small, face.Regular) > 0;
    }

    public static TimelineSheet Lay(Timeline timeline, PlainFace face) => TimelineSheet.Of(timeline, (text, size) => Measure(text, size, face.Regular));

    public static byte[] Paint(Timeline timeline, Palette colours, PlainFace face)
    {
        var sheet = Lay(timeline, face);
        using var plot = new Plot();
        new TimelinePlot(plot, colours, face.Regular).Draw(timeline, sheet);
        plot.Axes.SetLimits(0, TimelineSheet.Width, -sheet.Height, 0);
        return plot.GetImageBytes(TimelineSheet.Width, sheet.Height, ImageFormat.Png);
    }

    /// <summary>The width of words, in pixels.</summary>
    public static float Measure(string text, float size, string face)
    {
        using var paint = ScottPlot.Paint.NewDisposablePaint();
        return new LabelStyle { FontName = face, FontSize = size, Text = text, Bold = size == TimelineSheet.Heading }.Measure(text, paint).Width;
    }

    private void Draw(Timeline timeline, TimelineSheet sheet)
    {
        plot.Layout.Frameless();
        plot.HideGrid();
        plot.FigureBackground.Color = plot.DataBackground.Color = Color.FromHex(colours.Ground);
        for (var i = 0; i < sheet.Title.Length; i++)
            Write(sheet.Title[i], TimelineSheet.Margin, TimelineSheet.TitleAt + (i * TimelineSheet.TitleLine), TimelineSheet.Heading, colours.Ink, Alignment.MiddleLeft, bold: true);
        Write(timeline.Days, TimelineSheet.Margin, sheet.DaysAt, TimelineSheet.Small, colours.Pale, Alignment.MiddleLeft);
        foreach (var entry in sheet.Legend) Explain(entry);
        foreach (var axis in new[] { sheet.Axes.Above, sheet.Axes.Below }) DrawDays(timeline, axis);
        Write("today", Inside(TimelineSheet.X(timeline.Today), "today"), sheet.Axes.Above - TimelineSheet.Line, TimelineSheet.Small, colours.Ink, Alignment.MiddleCenter, bold: true);
        foreach (var row in sheet.Rows) DrawRow(timeline, row);
        for (var i = 0; i < sheet.Caption.Lines.Length; i++)
            Write(sheet.Caption.Lines[i], TimelineSheet.Margin, sheet.Caption.First + (i * TimelineSheet.Line), TimelineSheet.Small, colours.Pale, Alignment.MiddleLeft);
    }

    private void Explain(LegendEntry entry)
    {
        var (left, right) = (entry.SignX - (MarkSize / 2), entry.SignX + (MarkSize / 2));
        if (entry.Sign.Kind == LegendKind.Mark) Mark(entry.Sign.Mark, entry.SignX, entry.Y);
        else if (entry.Sign.Kind == LegendKind.Rest) Stripe(left, right, entry.Y, MarkSize);
        else Band(left, right, entry.Y);
        Write(entry.Words, entry.WordsX, entry.Y, TimelineSheet.Small, colours.Pale, Alignment.MiddleLeft);
    }

    private void DrawDays(Timeline timeline, float y)
    {
        foreach (var tick in timeline.Ticks)
            Write(tick.Label, Inside(TimelineSheet.X(tick.Place), tick.Label), y, TimelineSheet.Small, colours.Pale, Alignment.MiddleCenter);
    }

    private void DrawRow(Timeline timeline, SheetRow row)
    {
        for (var i = 0; i < row.Names.Length; i++)
            Write(row.Names[i], TimelineSheet.Margin, row.NameAt + (i * TimelineSheet.Line), TimelineSheet.Words, colours.Ink, Alignment.MiddleLeft);
        Write(row.Row.When, TimelineSheet.Width - TimelineSheet.Margin, row.WhenAt, TimelineSheet.Words, colours.Pale, Alignment.MiddleRight);
        var (y, today) = (row.LaneAt, TimelineSheet.X(timeline.Today));
        foreach (var tick in timeline.Ticks) Upright(TimelineSheet.X(tick.Place), y, 2, colours.Rule, LinePattern.Solid);
        foreach (var rest in timeline.Rests) Stripe(TimelineSheet.X(rest.From), TimelineSheet.X(rest.To), y, TimelineSheet.Lane);
        Level(TimelineSheet.X(0), TimelineSheet.X(1), y, 2, colours.Rule, LinePattern.Solid);
        Upright(today, y, 5, colours.Ink, LinePattern.Solid);
        if (row.Row.Band is { } band) Band(TimelineSheet.X(band.From), TimelineSheet.X(band.To), y);
        if (row.Row.Band is { GoesOn: true }) Mark(TimelineSign.ExpectedLater, TimelineSheet.X(1), y);
        foreach (var mark in row.Row.Marks)
        {
            var x = TimelineSheet.X(mark.Place);
            if (mark.Sign is TimelineSign.Due or TimelineSign.Overdue && today - x > MarkSize) Level(x, today, y, 8, colours.Of(mark.Sign), LinePattern.Dotted);
            Mark(mark.Sign, x, y);
        }
    }

    /// <summary>A rim of the ground parts every mark from what lies below it.</summary>
    private void Mark(TimelineSign sign, float x, float y)
    {
        var colour = colours.Of(sign);
        switch (sign)
        {
            case TimelineSign.Done:
                Shape(MarkerShape.FilledCircle, x, y, MarkSize - 4, colour);
                break;
            case TimelineSign.Due:
                Shape(MarkerShape.FilledTriangleUp, x, y, MarkSize + 8, colour);
                break;
            case TimelineSign.Overdue:
                Shape(MarkerShape.FilledSquare, x, y, MarkSize, colour);
                Write("!", x, y, MarkSize, colours.Ground, Alignment.MiddleCenter, bold: true);
                break;
            case TimelineSign.Expected:
                Shape(MarkerShape.FilledDiamond, x, y, MarkSize - 2, colour);
                break;
            default:
                Arrow(x, y, sign == TimelineSign.ExpectedLater ? 1 : -1, colour);
                break;
        }
    }

    private void Shape(MarkerShape shape, float x, float y, float size, string colour)
    {
        plot.Add.Marker(x, -y, shape, size + (2 * Halo), Color.FromHex(colours.Ground));
        plot.Add.Marker(x, -y, shape, size, Color.FromHex(colour));
    }

    /// <param name="way">1 to the right, -1 to the left.</param>
    private void Arrow(float x, float y, int way, string colour)
    {
        var (tip, back) = (x + (way * MarkSize / 2), x - (way * MarkSize / 2));
        var arrow = plot.Add.Polygon([new(tip, -y), new(back, -y + (MarkSize / 2)), new(back, -y - (MarkSize / 2))]);
        arrow.FillColor = Color.FromHex(colour);
        arrow.LineColor = Color.FromHex(colours.Ground);
        arrow.LineWidth = 2;
    }

    /// <summary>An open box: it never hides the line of a day.</summary>
    private void Band(float from, float to, float y)
    {
        var box = plot.Add.Rectangle(from, to, -y - (BandHeight / 2), -y + (BandHeight / 2));
        box.FillColor = Color.FromHex(colours.Ground);
        box.LineColor = Color.FromHex(colours.Expected);
        box.LineWidth = 4;
    }

    private void Stripe(float from, float to, float y, float height)
    {
        var box = plot.Add.Rectangle(from, to, -y - (height / 2), -y + (height / 2));
        box.FillStyle.Color = Color.FromHex(colours.Ground);
        box.FillStyle.HatchColor = Color.FromHex(colours.Rest);
        box.FillStyle.Hatch = new Striped(StripeDirection.DiagonalUp);
        box.LineWidth = 0;
    }

    private void Upright(float x, float y, float width, string colour, LinePattern pattern) =>
        Stroke(x, -y - (TimelineSheet.Lane / 2), x, -y + (TimelineSheet.Lane / 2), width, colour, pattern);

    private void Level(float from, float to, float y, float width, string colour, LinePattern pattern) => Stroke(from, -y, to, -y, width, colour, pattern);

    private void Stroke(float x1, float y1, float x2, float y2, float width, string colour, LinePattern pattern)
    {
        var line = plot.Add.Line(x1, y1, x2, y2);
        (line.LineWidth, line.LineColor, line.LinePattern, line.MarkerSize) = (width, Color.FromHex(colour), pattern, 0);
    }

    private void Write(string text, float x, float y, float size, string colour, Alignment alignment, bool bold = false)
    {
        // The library centres the box of a line, in which letters stand a little high.
        var label = plot.Add.Text(text, x, -y - (size * Sink));
        (label.LabelFontName, label.LabelFontSize, label.LabelBold, label.LabelFontColor, label.Alignment) = (face, size, bold, Color.FromHex(colour), alignment);
    }

    /// <summary>The middle of a label that would else reach beyond the margin.</summary>
    private float Inside(float x, string label)
    {
        var half = Measure(label, TimelineSheet.Small, face) / 2;
        return Math.Clamp(x, (TimelineSheet.Margin / 2) + half, TimelineSheet.Width - (TimelineSheet.Margin / 2) - half);
    }
}
