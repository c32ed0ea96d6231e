using System.Collections.Immutable;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Pictures;

/// <summary>Where everything of a timeline stands, in pixels from the upper left corner. Made for a telephone that shows it a third as wide: no letter is smaller than 30 px here.</summary>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Title">Lines.</param>
/// <param name="Legend">What the signs mean; only those that occur.</param>
/// <param name="Axes">The middles of the two lines of days, above the rows and below them.</param>
/// <param name="Caption">Lines, and the middle of the first.</param>
internal sealed record TimelineSheet(
    int Height,
    ImmutableArray<string> Title,
    ImmutableArray<LegendEntry> Legend,
    (float Above, float Below) Axes,
    ImmutableArray<SheetRow> Rows,
    (ImmutableArray<string> Lines, float First) Caption)
{
    public const int Width = 1080;

    public const float Heading = 46, Words = 34, Small = 30;

    /// <summary>Free at every edge.</summary>
    public const float Margin = 40;

    /// <summary>Height of a line of words, and of the lane in which the marks of a row stand.</summary>
    public const float Line = 44, Lane = 52;

    /// <summary>The middle of the first line of the title.</summary>
    public const float TitleAt = 62;

    /// <summary>From the middle of one line of the title to the next, or to the line of days below it.</summary>
    public const float TitleLine = 54;

    /// <summary>What follows is not in every typeface.</summary>
    private const int LastLetter = 0x52F;

    private const float Gap = 22, Between = 36, LegendText = 44;

    /// <summary>The middle of the line of days below the title.</summary>
    public float DaysAt => TitleAt + (Title.Length * TitleLine);

    /// <param name="measure">The width of words at a size, in pixels; at <see cref="Heading"/> of bold ones.</param>
    public static TimelineSheet Of(Timeline timeline, Func<string, float, float> measure)
    {
        var named = timeline.Title.EnumerateRunes().All(r => r.Value is <= LastLetter or (>= 0x2010 and <= 0x2027)) ? timeline.Title : "The service of your bike";
        var title = WordLines.Of(named, Width - (2 * Margin), s => measure(s, Heading));
        var legend = Placed(timeline, TitleAt + (title.Length * TitleLine) + Line + Gap, measure);
        var top = (legend.IsEmpty ? TitleAt + (title.Length * TitleLine) : legend[^1].Y) + Between + Line;
        var axis = top + Line;
        var y = axis + (Line / 2) + Gap;
        var rows = ImmutableArray.CreateBuilder<SheetRow>();
        foreach (var row in timeline.Rows)
        {
            var names = WordLines.Of(row.Called, Width - (2 * Margin), s => measure(s, Words));
            // The day stands behind the name where both fit, else below it.
            var beside = measure(names[^1], Words) + Between + measure(row.When, Words) <= Width - (2 * Margin);
            var lines = names.Length + (beside ? 0 : 1);
            rows.Add(new SheetRow(row, names, y + (Line / 2), y + ((lines - 0.5f) * Line), y + (lines * Line) + (Lane / 2)));
            y += (lines * Line) + Lane + Gap;
        }

        var below = y + (Line / 2);
        var caption = timeline.Caption.Length == 0 ? [] : WordLines.Of(timeline.Caption, Width - (2 * Margin), s => measure(s, Small));
        var first = below + Line + Gap;
        var height = (caption.IsEmpty ? below + (Line / 2) : first + ((caption.Length - 0.5f) * Line)) + Margin;
        return new TimelineSheet((int)MathF.Ceiling(height), title, legend, (axis, below), rows.ToImmutable(), (caption, first));
    }

    /// <param name="place">In [0, 1].</param>
    public static float X(double place) => Margin + ((float)place * (Width - (2 * Margin)));

    private static ImmutableArray<LegendEntry> Placed(Timeline timeline, float y, Func<string, float, float> measure)
    {
        var x = Margin;
        var entries = ImmutableArray.CreateBuilder<LegendEntry>();
        foreach (var (sign, words) in Occurring(timeline))
        {
            var width = LegendText + measure(words, Small);
            if (x > Margin && x + width > Width - Margin) (x, y) = (Margin, y + Line);
            entries.Add(new LegendEntry(sign, words, x + (LegendText / 2) - 6, x + LegendText, y));
            x += width + Between;
        }

        return entries.ToImmutable();
    }

    private static IEnumerable<(LegendSign Sign, string Words)> Occurring(Timeline timeline)
    {
        var signs = timeline.Rows.SelectMany(r => r.Marks.Select(m => m.Sign).Concat(r.Band is { GoesOn: true } ? [TimelineSign.ExpectedLater] : [])).ToHashSet();
        foreach (var (sign, words) in new[]
        {
            (TimelineSign.Done, "done"), (TimelineSign.DoneEarlier, "done before"), (TimelineSign.Due, "due since"), (TimelineSign.Overdue, "overdue since"),
            (TimelineSign.Expected, "expected"), (TimelineSign.ExpectedLater, "later"),
        })
        {
            if (signs.Contains(sign)) yield return (new LegendSign(LegendKind.Mark, sign), words);
        }

        if (timeline.Rows.Any(r => r.Band is not null)) yield return (new LegendSign(LegendKind.Band), "within these days 8 times in 10");
        if (!timeline.Rests.IsEmpty) yield return (new LegendSign(LegendKind.Rest), "not riding");
    }
}

/// <param name="Names">The task in one line or more.</param>
/// <param name="NameAt">The middle of the first line of the name.</param>
/// <param name="WhenAt">The middle of the line in which the day stands, at the right.</param>
/// <param name="LaneAt">The middle of the lane of its marks.</param>
internal sealed record SheetRow(TimelineRow Row, ImmutableArray<string> Names, float NameAt, float WhenAt, float LaneAt);

/// <param name="SignX">The middle of the sign.</param>
/// <param name="WordsX">The left of the words.</param>
/// <param name="Y">The middle of both.</param>
internal sealed record LegendEntry(LegendSign Sign, string Words, float SignX, float WordsX, float Y);

/// <param name="Mark">Of a mark only.</param>
internal readonly record struct LegendSign(LegendKind Kind, TimelineSign Mark = default);

internal enum LegendKind
{
    Mark,
    Band,
    Rest,
}
