using System.Globalization;
using System.Text;

namespace ShedBot.Knowledge.Loading.Yaml;

/// <summary>Characters that a reviewer cannot see, wherever they come from: YAML can write any of them as an escape.</summary>
internal static class HiddenMarks
{
    /// <returns>What stands there, for a report; null when everything in the text can be seen.</returns>
    public static string? Find(string text)
    {
        for (var at = 0; at < text.Length;)
        {
            if (!Rune.TryGetRuneAt(text, at, out var rune)) return $"half a character (U+{(int)text[at]:X4}) stands here";
            if (rune.Value != '\n' && IsHidden(rune)) return $"the hidden character U+{rune.Value:X4} stands here";
            at += rune.Utf16SequenceLength;
        }

        return null;
    }

    /// <summary>The text with a mark that can be seen in place of each that cannot, for reports.</summary>
    public static string Shown(string text) => string.Concat(text.EnumerateRunes().Select(r => r.Value != '\n' && IsHidden(r) ? "\uFFFD" : r.ToString()));

    /// <remarks>
    /// Of the format characters (Unicode category Cf) the two joiners, U+200C and U+200D, are let through: scripts and pictures need them.
    /// The fillers are letters by category and blank to the eye.
    /// </remarks>
    private static bool IsHidden(Rune rune) => rune.Value switch
    {
        0x200C or 0x200D => false,
        0x115F or 0x1160 or 0x3164 or 0xFFA0 or 0x2800 => true,
        _ => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse,
    };
}
