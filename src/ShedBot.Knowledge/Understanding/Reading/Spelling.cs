using System.Collections.Frozen;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>
/// Repairs words that nobody knows to the nearest word that the rules use: one slip in a word of four letters or more, two in a word
/// of eight or more; letters left out, added, mistaken or swapped with a neighbour count as one slip each (optimal string alignment).
/// The fuzzy-matching library at hand counts a swap as two slips and scores by share of the length, so the distance is our own.
/// </summary>
internal sealed class Spelling
{
    private const int ShortWord = 6;
    private const string Vowels = "aeiouy";

    private static readonly FrozenSet<string> SameSound = FrozenSet.Create("kc", "ck", "sc", "cs", "sz", "zs", "gj", "jg", "dt", "td");

    private readonly FrozenSet<string> known;
    private readonly FrozenDictionary<(char First, int Length), string[]> shelves;

    /// <param name="vocabulary">The words of the rules, most wanted first: of two equally near, the earlier wins.</param>
    public Spelling(IReadOnlyCollection<string> vocabulary)
    {
        known = vocabulary.ToFrozenSet();
        shelves = vocabulary.Where(w => w.Length >= 4).Distinct()
            .GroupBy(w => (w[0], w.Length))
            .ToFrozenDictionary(g => g.Key, g => g.ToArray());
    }

    public bool Knows(string word) => known.Contains(word);

    /// <returns>The repaired word, or the word itself when it is known or nothing is near.</returns>
    public string Repair(string word)
    {
        if (word.Length is < 4 or > 24 || known.Contains(word) || CommonWords.Holds(word) || char.IsDigit(word[0]))
            return word;
        var undoubled = Undoubled(word);
        if (known.Contains(undoubled))
            return undoubled;
        var allowed = word.Length >= 8 ? 2 : 1;
        string? best = null;
        var bestDistance = allowed + 1;
        // A slip on the first letter is rare, save for a swap with the second.
        foreach (var first in word[0] == word[1] ? [word[0]] : new[] { word[0], word[1] })
        {
            for (var length = word.Length - allowed; length <= word.Length + allowed; length++)
            {
                foreach (var candidate in shelves.GetValueOrDefault((first, length), []))
                {
                    if (word.Length <= ShortWord && !IsLikelySlip(word, candidate))
                        continue;
                    var distance = Distance(word, candidate, bestDistance);
                    if (distance < bestDistance)
                        (best, bestDistance) = (candidate, distance);
                }
            }
        }
        return best ?? word;
    }

    /// <summary>
    /// In a short word nearly every letter changed gives another English word, so only the commonest slips count: a letter left out or
    /// doubled, two swapped, a vowel mistaken, one consonant for another of the same sound.
    /// </summary>
    private static bool IsLikelySlip(string word, string candidate)
    {
        if (candidate.Length > word.Length)
            return true;
        if (candidate.Length < word.Length)
            return Undoubled(word) == Undoubled(candidate);
        var at = 0;
        while (at < word.Length - 1 && word[at] == candidate[at])
            at++;
        return at + 1 < word.Length && word[at] == candidate[at + 1] && word[at + 1] == candidate[at]
            || word.Length > 4 && Vowels.Contains(word[at]) && Vowels.Contains(candidate[at])
            || SameSound.Contains($"{word[at]}{candidate[at]}");
    }

    private static string Undoubled(string word)
    {
        var kept = new System.Text.StringBuilder(word.Length);
        foreach (var c in word)
        {
            if (kept.Length == 0 || kept[^1] != c)
                kept.Append(c);
        }
        return kept.ToString();
    }

    /// <summary>Optimal string alignment distance, given up at <paramref name="limit"/>.</summary>
    internal static int Distance(string a, string b, int limit)
    {
        Span<int> before = stackalloc int[b.Length + 1], last = stackalloc int[b.Length + 1], row = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                least = Math.Min(least, row[j]);
            }
            if (least >= limit)
                return limit;
            var spare = before;
            before = last;
            last = row;
            row = spare;
        }
        return last[b.Length];
    }
}
