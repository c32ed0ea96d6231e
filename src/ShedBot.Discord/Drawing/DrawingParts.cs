using System.Text.RegularExpressions;

namespace ShedBot.Discord.Drawing;

/// <summary>A drawing taken apart: whole sentences above and below it are text like any other, which a telephone can break where it likes; what is left can be drawn larger.</summary>
/// <param name="Above">May be empty, as may the other two.</param>
internal readonly partial record struct DrawingParts(string Above, string Lines, string Below)
{
    /// <summary>A line with so many blanks, of four words or more, is taken for a sentence.</summary>
    private const int LeastBlanks = 3;

    public static DrawingParts Of(string text)
    {
        var lines = text.Split('\n').Select(l => l.TrimEnd()).ToList();
        var margin = lines.Where(l => l.Length > 0).Select(Indent).DefaultIfEmpty(0).Min();
        var above = Sentences([.. lines.TakeWhile(Reads)], fromStart: true);
        var below = Sentences([.. lines.Skip(above).Reverse().TakeWhile(Reads).Reverse()], fromStart: false);
        return new DrawingParts(
            Joined(lines.Take(above)), string.Join('\n', lines.Take(lines.Count - below).Skip(above)).Trim('\n'), Joined(lines.TakeLast(below)));

        bool Reads(string line) => line.Length == 0 || (Indent(line) == margin && Words().IsMatch(line));
    }

    /// <summary>How many lines of words may go: up to a sentence that begins or goes on there. A single word beside a drawing is a label of it.</summary>
    private static int Sentences(List<string> words, bool fromStart)
    {
        for (var count = words.Count; count > 0; count--)
        {
            var innermost = fromStart ? count - 1 : words.Count - count;
            var goesOn = fromStart && innermost > 0 && words[innermost - 1] is { Length: > 0 } before && before[^1] is not ('.' or ':' or '!' or '?');
            if (words[innermost].Count(c => c == ' ') >= LeastBlanks || (goesOn && words[innermost].Length > 0)) return count;
        }

        return 0;
    }

    private static int Indent(string line) => line.Length - line.TrimStart(' ').Length;

    /// <summary>Lines that were broken for their width are put together again.</summary>
    private static string Joined(IEnumerable<string> lines) =>
        Broken().Replace(string.Join('\n', lines.Select(l => l.Trim())).Trim('\n'), " ");

    // Words with single blanks between them: two blanks in a row mean columns, and those belong to the drawing.
    [GeneratedRegex(@"^ *[\p{L}\p{N}(""'][\p{L}\p{N}()""',.;:%!?/-]*( [\p{L}\p{N}(""'][\p{L}\p{N}()""',.;:%!?/-]*)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    [GeneratedRegex(@"(?<=[^.:!?\n])\n(?=[^\n])", RegexOptions.CultureInvariant)]
    private static partial Regex Broken();
}
