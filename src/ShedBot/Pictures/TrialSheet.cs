using System.Collections.Immutable;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Telling;

namespace ShedBot.Pictures;

/// <summary>Where everything of a trial stands, in pixels from the upper left corner. As wide, and with letters as large, as the picture of a timeline.</summary>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Panel">The upper left corner of the panel of beliefs, or null where there are too few to draw.</param>
internal sealed record TrialSheet(
    int Height, ImmutableArray<string> Title, ImmutableArray<TrialLine> Lines, ImmutableArray<TrialLane> Lanes, float LegendAt, TrialPanel? Panel)
{
    public const int Width = TimelineSheet.Width;

    public const float Side = 560;

    /// <summary>Fewer beliefs than this are five bins of nothing.</summary>
    private const int LeastBeliefs = 25;

    /// <summary>Bold letters are no wider than so many times the plain ones.</summary>
    private const float Bold = 1.15f;

    private const float Left = TimelineSheet.Margin, Right = Width - TimelineSheet.Margin, Gap = 26;

    /// <param name="measure">The width of words at a size, in pixels; at <see cref="TimelineSheet.Heading"/> of bold ones.</param>
    public static TrialSheet Of(TrialReport report, Func<string, float, float> measure)
    {
        var title = WordLines.Of(TrialWords.Verdict(report), Right - Left, s => measure(s, TimelineSheet.Heading));
        var legend = TimelineSheet.TitleAt + (title.Length * TimelineSheet.TitleLine) + 10;
        var y = legend + (2 * TimelineSheet.Line);
        var (lines, lanes) = (ImmutableArray.CreateBuilder<TrialLine>(), ImmutableArray.CreateBuilder<TrialLane>());
        foreach (var (heading, measures) in TrialCards.Groups(report))
        {
            y += Gap;
            foreach (var line in WordLines.Of(heading, Right - Left, s => Bold * measure(s, TimelineSheet.Words)))
            {
                lines.Add(new TrialLine(line, y, Heading: true));
                y += TimelineSheet.Line;
            }

            foreach (var compared in measures.Where(m => m.Pairs > 0 && IsShown(m.Measure)))
            {
                lanes.Add(new TrialLane(compared, y, y + TimelineSheet.Line, Scale(report, compared.Measure)));
                y += TimelineSheet.Line + TimelineSheet.Lane + 6;
            }
        }

        TrialPanel? panel = null;
        if (Beliefs(report) is var (what, old, @new))
        {
            y += Gap;
            foreach (var line in WordLines.Of(what, Right - Left, s => Bold * measure(s, TimelineSheet.Words)))
            {
                lines.Add(new TrialLine(line, y, Heading: true));
                y += TimelineSheet.Line;
            }

            panel = new TrialPanel((Width - Side) / 2, y, old, @new);
            y += Side + (2 * TimelineSheet.Line);
        }

        return new TrialSheet((int)MathF.Ceiling(y + TimelineSheet.Margin), title, lines.ToImmutable(), lanes.ToImmutable(), legend, panel);
    }

    private static bool IsShown(Measure measure) => Measures.Counts(measure) || measure == Measure.Asked;

    /// <summary>The largest value that a lane shows: the same for one measure in the whole picture.</summary>
    private static double Scale(TrialReport report, Measure measure) => Measures.MoreIsBetter(measure) ? 1 : 1.15 * TrialCards.Groups(report)
        .SelectMany(g => g.Measures).Where(m => m.Measure == measure && m.Pairs > 0).Select(m => Math.Max(m.Old + m.High, Math.Max(m.Old, m.New))).Max();

    /// <summary>Closed cases before simulated riders: only they show whether rules are true.</summary>
    private static (string What, ImmutableArray<TrialBin> Old, ImmutableArray<TrialBin> New)? Beliefs(TrialReport report)
    {
        const string Heading = "Can its chances be taken at their word? On the dashed line they can.";
        if (report.Replay.OldBins.Sum(b => b.Count) >= LeastBeliefs) return ($"{Heading} Closed cases, before the first repair.", report.Replay.OldBins, report.Replay.NewBins);
        var riders = report.Worlds.FirstOrDefault(w => w.AtLarge.OldBins.Sum(b => b.Count) >= LeastBeliefs);
        return riders is null ? null : ($"{Heading} {TrialWords.World(riders.World)}, riders as they come, before the first repair.", riders.AtLarge.OldBins, riders.AtLarge.NewBins);
    }
}

/// <param name="Y">The middle.</param>
internal sealed record TrialLine(string Words, float Y, bool Heading);

/// <summary>One measure: its name and figures in a line, and below it a lane on which further right is better.</summary>
/// <param name="NameAt">The middle of the line of words.</param>
/// <param name="LaneAt">The middle of the lane.</param>
/// <param name="Most">The value at the end of the lane that is worst, where less is better; else at the end that is best.</param>
internal sealed record TrialLane(Compared Compared, float NameAt, float LaneAt, double Most)
{
    public string Name => MeasureWords.Name(Compared.Measure);

    public string Figures => Compared.Differ == 0
        ? $"{MeasureWords.Value(Compared.Measure, Compared.Old)} both"
        : $"{MeasureWords.Value(Compared.Measure, Compared.Old)} to {MeasureWords.Value(Compared.Measure, Compared.New)}{(Compared.Verdict == Verdict.NoDifference ? "" : $", {MeasureWords.Word(Compared)}")}";

    public float X(double value)
    {
        var share = Most > 0 ? Math.Clamp(value / Most, 0, 1) : 0;
        return TimelineSheet.X(Measures.MoreIsBetter(Compared.Measure) ? share : 1 - share);
    }
}

/// <param name="X">The left of the square.</param>
/// <param name="Y">Its top.</param>
internal sealed record TrialPanel(float X, float Y, ImmutableArray<TrialBin> Old, ImmutableArray<TrialBin> New);
