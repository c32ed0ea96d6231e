using System.Globalization;
using System.Text;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>A message brought to plain, comparable letters.</summary>
/// <param name="Letters">Lower case, compatibility characters folded, marks stacked on letters taken off, one kind of apostrophe.</param>
/// <param name="CutShort">True when the message was longer than <see cref="MaxLength"/> and only its start is here.</param>
/// <param name="LetterCount">How many characters are letters of any script.</param>
internal sealed record PlainText(string Letters, bool CutShort, int LetterCount)
{
    /// <summary>How many characters of a message are read. A rider's story fits; a pasted file does not.</summary>
    public const int MaxLength = 4000;

    /// <summary>Never throws, whatever the text holds; time grows with the length that is read.</summary>
    public static PlainText Of(string message)
    {
        var cut = message.Length > MaxLength;
        var letters = new StringBuilder(Math.Min(message.Length, MaxLength));
        var count = 0;
        foreach (var rune in Folded(cut ? message[..MaxLength] : message).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
                continue;
            var lower = Rune.ToLowerInvariant(Narrow(rune));
            if (Rune.IsLetter(lower))
                count++;
            letters.Append(IsApostrophe(lower.Value) ? "'" : lower.ToString());
        }
        return new PlainText(letters.ToString(), cut, count);
    }

    /// <summary>NFKD, so that "é" is an e with a mark; half of a pair of surrogates is replaced first, for it cannot be normalised.</summary>
    private static string Folded(string text)
    {
        var whole = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            whole.Append(rune.ToString());
        return whole.ToString().Normalize(NormalizationForm.FormKD);
    }

    /// <summary>The wide Latin letters of East Asian type, U+FF01 to U+FF5E, where the runtime's tables do not fold them.</summary>
    private static Rune Narrow(Rune rune) => rune.Value is >= 0xFF01 and <= 0xFF5E ? new Rune(rune.Value - 0xFEE0) : rune;

    private static bool IsApostrophe(int rune) => rune is '\'' or '`' or 0x2019 or 0x2018 or 0x00B4 or 0x02BC or 0xFF07;
}
