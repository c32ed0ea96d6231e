using System.Globalization;
using ShedBot.Coaching.Cards;

namespace ShedBot.Cards;

/// <summary>The parts of a card as lines of plain text.</summary>
internal static class PlainBlocks
{
    private const int BarLength = 20;

    public static IEnumerable<string> Lines(CardBlock block, int width) => block switch
    {
        TextBlock b => Wrapped.Lines(CleanText.Of(b.Text), width),
        CautionBlock b => Caution(b, width),
        StepsBlock b => Headed(b.Heading, b.Steps.SelectMany((s, i) => Step(s, b.First + i, width))),
        ListBlock b => Headed(b.Heading, b.Items.SelectMany(i => Wrapped.Lines(CleanText.Of(i), width, "  - ", "    "))),
        DrawingBlock b => CleanText.Of(b.Text).TrimEnd('\n').Split('\n').Select(l => ("  " + l).TrimEnd()),
        BeliefBlock b => b.Lines.SelectMany(l => Bar(l, width)),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "A new kind of block needs a way to be shown."),
    };

    private static IEnumerable<string> Headed(string heading, IEnumerable<string> lines) =>
        heading.Length == 0 ? lines : lines.Prepend(CleanText.Of(heading).TrimEnd(':') + ":");

    private static IEnumerable<string> Step(CardStep step, int number, int width)
    {
        var first = string.Create(CultureInfo.InvariantCulture, $"{number,4}. ");
        var rest = new string(' ', first.Length);
        var lines = Wrapped.Lines(CleanText.Of(step.Do), width, first, rest);
        return step.Note is { } note ? lines.Concat(Wrapped.Lines($"({CleanText.Of(note)})", width, rest, rest)) : lines;
    }

    /// <summary>Signal word, hazard, consequence, avoidance: the order of ANSI Z535.6.</summary>
    private static IEnumerable<string> Caution(CautionBlock caution, int width)
    {
        var says = CleanText.Of($"{Sentence(caution.Hazard)} {Sentence(caution.Consequence)} {Sentence(caution.Avoid)}");
        return Wrapped.Lines(says, width, $"!! {caution.Word}: ", "!!   ");
    }

    private static IEnumerable<string> Bar(BeliefLine line, int width)
    {
        var filled = (int)Math.Round(Math.Clamp(line.Chance, 0, 1) * BarLength);
        var bar = new string('#', filled) + new string('.', BarLength - filled);
        var chance = string.Create(CultureInfo.InvariantCulture, $"{Percent(line.Chance),3} %  {line.Word}");
        return Wrapped.Lines(CleanText.OneLine(line.Cause, int.MaxValue), width, $"  {bar} {chance}: ", new string(' ', BarLength + 4));
    }

    /// <summary>Whole percent; never 0 or 100 for what is not certain.</summary>
    public static int Percent(double chance) => Math.Clamp((int)Math.Round(chance * 100), chance > 0 ? 1 : 0, chance < 1 ? 99 : 100);

    /// <summary>With a capital and a full stop.</summary>
    public static string Sentence(string text)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0) return trimmed;
        return char.ToUpperInvariant(trimmed[0]) + trimmed[1..] + (trimmed[^1] is '.' or '!' or '?' ? "" : ".");
    }
}
