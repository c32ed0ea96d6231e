using ScottPlot;

namespace ShedBot.Pictures;

/// <summary>The few strokes that a picture is made of. Coordinates are the pixels of the sheet, with y growing downwards.</summary>
/// <param name="face">The name under which the typeface is known.</param>
internal sealed class Sketch(Plot plot, Palette colours, string face)
{
    private const float Halo = 4;

    /// <summary>Of the size of letters: the library centres the box of a line, in which letters stand a little high.</summary>
    private const float Sink = 0.1f;

    public Palette Colours => colours;

    public void Ground()
    {
        plot.Layout.Frameless();
        plot.HideGrid();
        plot.FigureBackground.Color = plot.DataBackground.Color = Color.FromHex(colours.Ground);
    }

    public void Stroke(float x1, float y1, float x2, float y2, float width, string colour, LinePattern? pattern = null)
    {
        var line = plot.Add.Line(x1, -y1, x2, -y2);
        (line.LineWidth, line.LineColor, line.LinePattern, line.MarkerSize) = (width, Color.FromHex(colour), pattern ?? LinePattern.Solid, 0);
    }

    /// <summary>A rim of the ground parts every mark from what lies below it.</summary>
    public void Filled(MarkerShape shape, float x, float y, float size, string colour)
    {
        plot.Add.Marker(x, -y, shape, size + (2 * Halo), Color.FromHex(colours.Ground));
        plot.Add.Marker(x, -y, shape, size, Color.FromHex(colour));
    }

    public void Open(float x, float y, float size, string colour)
    {
        Filled(MarkerShape.FilledCircle, x, y, size, colour);
        plot.Add.Marker(x, -y, MarkerShape.FilledCircle, size - 12, Color.FromHex(colours.Ground));
    }

    public void Write(string text, float x, float y, float size, string colour, Alignment alignment, bool bold = false)
    {
        var label = plot.Add.Text(text, x, -y - (size * Sink));
        (label.LabelFontName, label.LabelFontSize, label.LabelBold, label.LabelFontColor, label.Alignment) = (face, size, bold, Color.FromHex(colour), alignment);
    }
}
