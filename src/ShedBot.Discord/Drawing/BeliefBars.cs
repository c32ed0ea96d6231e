using System.Globalization;
using ShedBot.Coaching.Cards;

namespace ShedBot.Discord.Drawing;

/// <summary>What is believed as bars of characters, narrow enough for a telephone.</summary>
internal static class BeliefBars
{
    /// <summary>Columns that a telephone shows of a fixed-width face without breaking the line; measured at 380 px.</summary>
    public const int Width = 40;

    private const int Length = 12, Indent = 7;

    /// <summary>The longest of the likelihood words.</summary>
    private const int MostWord = 19;

    public static string Of(BeliefBlock block) => string.Join('\n', block.Lines.SelectMany(Lines));

    private static IEnumerable<string> Lines(BeliefLine line)
    {
        var filled = (int)Math.Round(Math.Clamp(line.Chance, 0, 1) * Length);
        var bar = new string('█', filled) + new string('░', Length - filled);
        var (word, cause) = (Markup.OneLine(line.Word), Markup.OneLine(line.Cause));
        var beside = word.Length <= MostWord;
        yield return string.Create(CultureInfo.InvariantCulture, $"{Percent(line.Chance),3} %  {bar}  {(beside ? word : "")}").TrimEnd();
        foreach (var rest in Wrapped(beside ? cause : $"{word}: {cause}")) yield return new string(' ', Indent) + rest;
    }

    /// <summary>Whole percent; never 0 or 100 for what is not certain.</summary>
    private static int Percent(double chance) => Math.Clamp((int)Math.Round(chance * 100), chance > 0 ? 1 : 0, chance < 1 ? 99 : 100);

    private static IEnumerable<string> Wrapped(string text) => TextRuns.Words(text, Width - Indent);
}
