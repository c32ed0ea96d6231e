using System.Globalization;
using System.Text;

namespace ShedBot.Coaching.Cards;

/// <summary>Makes any text safe to show: what steers a screen, or turns the order of the letters around, is taken out.</summary>
public static class CleanText
{
    /// <summary>Keeps letters of every script, marks, emoji and line ends; a tab becomes a space; half a character becomes U+FFFD.</summary>
    public static string Of(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value == '\n') clean.Append('\n');
            else if (rune.Value == '\t') clean.Append(' ');
            else if (!Steers(rune)) clean.Append(rune.ToString());
        }

        return clean.ToString();
    }

    /// <summary>The same on one line, at most <paramref name="most"/> characters, cut with an ellipsis.</summary>
    public static string OneLine(string text, int most)
    {
        var line = Of(text).ReplaceLineEndings(" ").Trim();
        return StringInfo.ParseCombiningCharacters(line) is var starts && starts.Length > most
            ? string.Concat(line.AsSpan(0, starts[most - 1]), "…")
            : line;
    }

    private static bool Steers(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control
        || rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F or 0x061C or 0xFEFF;
}
