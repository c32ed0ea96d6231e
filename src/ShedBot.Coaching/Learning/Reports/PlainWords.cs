using System.Collections.Frozen;
using System.Text;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>The words of a message that may say something, in small letters.</summary>
internal static class PlainWords
{
    private const int Shortest = 3;

    /// <summary>They stand in any message and tell nothing of what it is about.</summary>
    private static readonly FrozenSet<string> Empty = (
        "the and but for nor with from into onto out off its it's this that these those there here when while then than what which who why how was were are been being "
        + "has have had does did doing don't doesn't didn't isn't wasn't can can't cannot could would should will won't may might must not now just very really quite too also "
        + "any some all both each every more most much many few other such own same only about after again before because during until above below over under you your "
        + "yours he she they them their his her our ours we i'm i've it'll that's there's bike mine get gets got getting goes going make makes like please help hello thanks").Split(' ').ToFrozenSet(StringComparer.Ordinal);

    public static IEnumerable<string> Of(string words) => Folded(words).Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .Select(w => w.Trim('\'')).Where(w => w.Length >= Shortest && !Empty.Contains(w));

    /// <summary>Small letters and digits with single blanks between: what is the same but for its writing comes out the same.</summary>
    public static string Folded(string words)
    {
        var letters = new StringBuilder(words.Length);
        foreach (var rune in words.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune)) letters.Append(Rune.ToLowerInvariant(rune).ToString());
            else if (rune.Value is '\'' or '\u2019') letters.Append('\'');
            else if (letters.Length > 0 && letters[^1] != ' ') letters.Append(' ');
        }

        return letters.ToString().Trim();
    }
}
