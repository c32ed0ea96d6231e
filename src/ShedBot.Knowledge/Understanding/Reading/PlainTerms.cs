using System.Collections.Frozen;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>
/// Runs of words that are looked for as they are written, before anything is left out or brought to concepts: "I'm riding" loses its
/// sense with the "I'm". Apostrophes do not count.
/// </summary>
internal sealed class PlainTerms
{
    private const string Nothing = "0";

    private readonly FrozenDictionary<string, string[][]> terms;

    public PlainTerms(IEnumerable<string> texts) =>
        terms = texts.Select(t => Words(PlainText.Of(t).Letters).ToArray())
            .Where(t => t.Length > 0)
            .GroupBy(t => t[0])
            .ToFrozenDictionary(g => g.Key, g => g.OrderByDescending(t => t.Length).ToArray());

    public bool OccurIn(string letters) => Without(letters) is not null;

    /// <param name="instead">What stands where the run stood; empty for nothing.</param>
    /// <returns>The text without the first of the runs that it holds; null when it holds none.</returns>
    public string? Without(string letters, string instead = "")
    {
        var words = Words(letters);
        for (var i = 0; i < words.Count; i++)
        {
            foreach (var term in terms.GetValueOrDefault(words[i], []))
            {
                if (i + term.Length <= words.Count && words.GetRange(i, term.Length).SequenceEqual(term))
                    return string.Join(' ', [.. words.Take(i), instead, .. words.Skip(i + term.Length)]);
            }
        }
        return null;
    }

    /// <summary>Where the runs stand, counted in words and marks, from the first word to behind the last; they may lie over each other.</summary>
    public List<(int From, int To)> PlacesIn(string letters)
    {
        var words = Words(letters);
        return
        [
            .. words.SelectMany((word, i) => terms.GetValueOrDefault(word, [])
                .Where(term => i + term.Length <= words.Count && words.GetRange(i, term.Length).SequenceEqual(term))
                .Select(term => (i, i + term.Length))),
        ];
    }

    /// <summary>The text with a word that means nothing in the place of each run, so that the 'no' before a run denies nothing else.</summary>
    public string WithoutAll(string letters)
    {
        while (Without(letters, Nothing) is { } rest)
            letters = rest;
        return letters;
    }

    private static List<string> Words(string letters) =>
        Splitter.Split(letters).ConvertAll(w => English.Shorthand.GetValueOrDefault(w, w).Replace("'", "", StringComparison.Ordinal));
}
