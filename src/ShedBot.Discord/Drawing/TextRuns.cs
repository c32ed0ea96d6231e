using System.Text;

namespace ShedBot.Discord.Drawing;

/// <summary>Cuts text that is too long for one piece.</summary>
internal static class TextRuns
{
    /// <summary>Characters of a run before its marks are escaped; chosen so that the escaped run fits any message of ours with room to spare.</summary>
    public const int Most = 900;

    /// <summary>The text in runs, cut at a line's end, else a sentence's, else a blank; only blanks and line ends at the cuts are left out.</summary>
    public static IEnumerable<string> Of(string text, int most = Most)
    {
        var rest = text.Trim();
        while (rest.Length > most)
        {
            var at = CutAt(rest, most);
            yield return rest[..at].TrimEnd();
            rest = rest[at..].TrimStart();
        }

        if (rest.Length > 0) yield return rest;
    }

    /// <summary>Whole lines in runs, blanks kept as they are; only a line that is itself too long is cut.</summary>
    public static IEnumerable<string> Lines(string text, int most = Most)
    {
        var run = new StringBuilder();
        foreach (var line in text.Split('\n').SelectMany(l => Chunks(l, most)))
        {
            if (run.Length > 0 && run.Length + 1 + line.Length > most)
            {
                yield return run.ToString(1, run.Length - 1);
                run.Clear();
            }

            run.Append('\n').Append(line);
        }

        yield return run.ToString(1, run.Length - 1);
    }

    /// <summary>One line broken between words to a width; a word that is longer is cut.</summary>
    public static IEnumerable<string> Words(string line, int width)
    {
        var rest = line.Trim();
        while (rest.Length > width)
        {
            var at = rest.LastIndexOf(' ', width) is var blank && blank > 0 ? blank : WholeLetter(rest, width);
            yield return rest[..at].TrimEnd();
            rest = rest[at..].TrimStart();
        }

        if (rest.Length > 0) yield return rest;
    }

    /// <summary>At most so many characters; an ellipsis stands for the rest.</summary>
    public static string Cut(string text, int most)
    {
        if (text.Length <= most) return text;
        var end = most - 1;
        if (text.LastIndexOf(' ', end) is var blank && blank > most / 2) end = blank;
        return text[..WholeLetter(text, end)].TrimEnd() + "…";
    }

    private static IEnumerable<string> Chunks(string line, int most)
    {
        while (line.Length > most)
        {
            var at = WholeLetter(line, most);
            yield return line[..at];
            line = line[at..];
        }

        yield return line;
    }

    private static int CutAt(string text, int most)
    {
        // A cut in the first third would leave scraps.
        var least = most / 3;
        if (text.LastIndexOf('\n', most - 1) is var line && line > least) return line + 1;
        for (var i = most - 1; i > least; i--)
        {
            if (text[i] == ' ' && text[i - 1] is '.' or '!' or '?') return i;
        }

        return text.LastIndexOf(' ', most - 1) is var blank && blank > least ? blank : WholeLetter(text, most);
    }

    private static int WholeLetter(string text, int at) => at > 0 && char.IsHighSurrogate(text[at - 1]) ? at - 1 : at;
}
