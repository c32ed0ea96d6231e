using System.Collections.Immutable;

namespace ShedBot.Pictures;

/// <summary>Words in lines that are not wider than there is room.</summary>
internal static class WordLines
{
    /// <param name="width">Of a text; grows with it.</param>
    /// <returns>At least one line. A single word that is too wide stands in a line of its own.</returns>
    public static ImmutableArray<string> Of(string text, float room, Func<string, float> width)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && width(longer) > room)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines.ToImmutable();
    }
}
