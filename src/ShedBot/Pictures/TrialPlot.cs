using ScottPlot;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Scoring;

namespace ShedBot.Pictures;

/// <summary>
/// Paints a trial as PNG: for every measure a ring for the old rules, a mark for the new ones and the interval of the change, further right being better in all of
/// them; below, the chances of the leading cause against what came of them. Old and new differ in shape, so that no colour is needed to tell them apart.
/// </summary>
internal sealed class TrialPlot(Sketch sketch)
{
    private const float Mark = 30, Ring = 34;

    private Palette Colours => sketch.Colours;

    public static TrialSheet Lay(TrialReport report, PlainFace face) => TrialSheet.Of(report, (text, size) => TimelinePlot.Measure(text, size, face.Regular));

    public static byte[] Paint(TrialReport report, Palette colours, PlainFace face)
    {
        var sheet = Lay(report, face);
        using var plot = new Plot();
        new TrialPlot(new Sketch(plot, colours, face.Regular)).Draw(sheet);
        plot.Axes.SetLimits(0, TrialSheet.Width, -sheet.Height, 0);
        return plot.GetImageBytes(TrialSheet.Width, sheet.Height, ImageFormat.Png);
    }

    private void Draw(TrialSheet sheet)
    {
        sketch.Ground();
        for (var i = 0; i < sheet.Title.Length; i++)
            Write(sheet.Title[i], TimelineSheet.Margin, TimelineSheet.TitleAt + (i * TimelineSheet.TitleLine), TimelineSheet.Heading, Colours.Ink, Alignment.MiddleLeft, true);
        Legend(sheet.LegendAt);
        foreach (var line in sheet.Lines) Write(line.Words, TimelineSheet.Margin, line.Y, TimelineSheet.Words, Colours.Ink, Alignment.MiddleLeft, line.Heading);
        foreach (var lane in sheet.Lanes) Draw(lane);
        if (sheet.Panel is { } panel) Draw(panel);
    }

    private void Legend(float y)
    {
        const float Left = TimelineSheet.Margin;
        sketch.Open(Left + 18, y, Ring, Colours.Pale);
        Write("old rules", Left + 48, y, TimelineSheet.Small, Colours.Pale, Alignment.MiddleLeft);
        sketch.Filled(MarkerShape.FilledDiamond, Left + 248, y, Mark, Colours.Expected);
        Write("new rules", Left + 278, y, TimelineSheet.Small, Colours.Pale, Alignment.MiddleLeft);
        Bar(Left + 460, Left + 520, y);
        Write("99 % sure it lies within", Left + 536, y, TimelineSheet.Small, Colours.Pale, Alignment.MiddleLeft);
        Write("Further right is better, in every line.", Left, y + TimelineSheet.Line, TimelineSheet.Small, Colours.Pale, Alignment.MiddleLeft);
    }

    private void Draw(TrialLane lane)
    {
        var (compared, y) = (lane.Compared, lane.LaneAt);
        Write(lane.Name, TimelineSheet.Margin, lane.NameAt, TimelineSheet.Small, Colours.Ink, Alignment.MiddleLeft);
        Write(lane.Figures, TrialSheet.Width - TimelineSheet.Margin, lane.NameAt, TimelineSheet.Small, Colours.Pale, Alignment.MiddleRight);
        sketch.Stroke(TimelineSheet.X(0), y, TimelineSheet.X(1), y, 2, Colours.Rule);
        if (compared.Differ > 0) Bar(lane.X(compared.Old + compared.Low), lane.X(compared.Old + compared.High), y);
        sketch.Open(lane.X(compared.Old), y, Ring, Colours.Pale);
        sketch.Filled(Shape(compared.Verdict), lane.X(compared.New), y, Mark, Of(compared.Verdict));
    }

    private void Draw(TrialPanel panel)
    {
        float X(double share) => panel.X + ((float)share * TrialSheet.Side);
        float Y(double share) => panel.Y + ((1 - (float)share) * TrialSheet.Side);
        for (var i = 0; i <= 4; i++)
        {
            sketch.Stroke(X(i / 4.0), Y(0), X(i / 4.0), Y(1), 2, Colours.Rule);
            sketch.Stroke(X(0), Y(i / 4.0), X(1), Y(i / 4.0), 2, Colours.Rule);
            Write($"{i * 25} %", X(i / 4.0), Y(0) + 30, TimelineSheet.Small, Colours.Pale, Alignment.MiddleCenter);
            Write($"{i * 25} %", X(0) - 16, Y(i / 4.0), TimelineSheet.Small, Colours.Pale, Alignment.MiddleRight);
        }

        sketch.Stroke(X(0), Y(0), X(1), Y(1), 4, Colours.Rest, LinePattern.Dashed);
        foreach (var bin in panel.Old) sketch.Stroke(X(bin.Said), Y(bin.Low), X(bin.Said), Y(bin.High), 4, Colours.Pale);
        foreach (var bin in panel.New) sketch.Stroke(X(bin.Said), Y(bin.Low), X(bin.Said), Y(bin.High), 4, Colours.Expected);
        foreach (var bin in panel.Old) sketch.Open(X(bin.Said), Y(bin.Came), Ring, Colours.Pale);
        foreach (var bin in panel.New) sketch.Filled(MarkerShape.FilledDiamond, X(bin.Said), Y(bin.Came), Mark, Colours.Expected);
        Write("chance given to the leading cause (across), how often right (up)", TrialSheet.Width / 2f, Y(0) + 30 + TimelineSheet.Line, TimelineSheet.Small - 4, Colours.Pale, Alignment.MiddleCenter);
    }

    private void Bar(float from, float to, float y)
    {
        const float Foot = 12;
        sketch.Stroke(from, y, to, y, 6, Colours.Expected);
        foreach (var x in new[] { from, to }) sketch.Stroke(x, y - Foot, x, y + Foot, 6, Colours.Expected);
    }

    private static MarkerShape Shape(Verdict verdict) => verdict switch
    {
        Verdict.Better => MarkerShape.FilledTriangleUp,
        Verdict.Worse => MarkerShape.FilledTriangleDown,
        _ => MarkerShape.FilledDiamond,
    };

    private string Of(Verdict verdict) => verdict switch
    {
        Verdict.Better => Colours.Done,
        Verdict.Worse => Colours.Overdue,
        _ => Colours.Expected,
    };

    private void Write(string text, float x, float y, float size, string colour, Alignment alignment, bool bold = false) => sketch.Write(text, x, y, size, colour, alignment, bold);
}
