using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace ShedBot.Cards;

/// <summary>The parts of a card, drawn.</summary>
internal static class RichBlocks
{
    private const int BarLength = 24;

    /// <summary>The safety colours that ANSI Z535.4 gives the signal words: red, orange, yellow, blue. The shades are ours.</summary>
    internal static ImmutableDictionary<string, (Color Letters, Color Ground)> SignalColours { get; } = new Dictionary<string, (Color, Color)>
    {
        ["DANGER"] = (new Color(255, 255, 255), new Color(176, 0, 0)),
        ["WARNING"] = (new Color(0, 0, 0), new Color(245, 130, 0)),
        ["CAUTION"] = (new Color(0, 0, 0), new Color(245, 205, 0)),
        ["NOTICE"] = (new Color(255, 255, 255), new Color(0, 70, 160)),
    }.ToImmutableDictionary(StringComparer.Ordinal);

    public static IRenderable Draw(CardBlock block) => block switch
    {
        TextBlock b => new Text(CleanText.Of(b.Text)),
        CautionBlock b => Caution(b),
        StepsBlock b => Headed(b.Heading, Steps(b)),
        ListBlock b => Headed(b.Heading, Points(b)),
        DrawingBlock b => new Text(CleanText.Of(b.Text).TrimEnd('\n')) { Overflow = Overflow.Crop },
        BeliefBlock b => Bars(b),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "A new kind of block needs a way to be shown."),
    };

    private static Rows Headed(string heading, IRenderable body) => heading.Length == 0
        ? new Rows(body)
        : new Rows(new Text(CleanText.Of(heading).TrimEnd(':') + ":", new Style(decoration: Decoration.Underline)), body);

    private static Rows Caution(CautionBlock caution)
    {
        var (letters, ground) = SignalColours.GetValueOrDefault(caution.Word, SignalColours["NOTICE"]);
        var says = CleanText.Of($"{PlainBlocks.Sentence(caution.Consequence)} {PlainBlocks.Sentence(caution.Avoid)}");
        var panel = new Panel(new Rows(new Text(PlainBlocks.Sentence(CleanText.Of(caution.Hazard)), new Style(decoration: Decoration.Bold)), new Text(says)))
        {
            Border = BoxBorder.Heavy,
            BorderStyle = new Style(ground),
            Expand = true,
        };
        return new Rows(new Text($" {caution.Word} ", new Style(letters, ground, Decoration.Bold)), panel);
    }

    private static Grid Steps(StepsBlock block)
    {
        var grid = TwoColumns(4);
        foreach (var (step, i) in block.Steps.Select((s, i) => (s, i)))
        {
            grid.AddRow(new Text(string.Create(CultureInfo.InvariantCulture, $"{block.First + i}.")), new Text(CleanText.Of(step.Do)));
            if (step.Note is { } note) grid.AddRow(new Text(""), new Text($"({CleanText.Of(note)})", new Style(decoration: Decoration.Italic)));
        }

        return grid;
    }

    private static Grid Points(ListBlock block)
    {
        var grid = TwoColumns(2);
        foreach (var item in block.Items) grid.AddRow(new Text("•"), new Text(CleanText.Of(item)));
        return grid;
    }

    private static Grid Bars(BeliefBlock block)
    {
        var grid = new Grid()
            .AddColumn(new GridColumn().NoWrap().PadLeft(0).PadRight(2))
            .AddColumn(new GridColumn().NoWrap().RightAligned().PadRight(2))
            .AddColumn(new GridColumn());
        foreach (var line in block.Lines)
        {
            var filled = (int)Math.Round(Math.Clamp(line.Chance, 0, 1) * BarLength);
            grid.AddRow(
                new Text(new string('█', filled) + new string('░', BarLength - filled)),
                new Text(string.Create(CultureInfo.InvariantCulture, $"{PlainBlocks.Percent(line.Chance)} %")),
                new Text(CleanText.OneLine($"{line.Cause} ({line.Word})", int.MaxValue)));
        }

        return grid;
    }

    private static Grid TwoColumns(int first) => new Grid()
        .AddColumn(new GridColumn().Width(first).RightAligned().PadLeft(0).PadRight(1))
        .AddColumn(new GridColumn().PadLeft(0));
}
