using System.Collections.Frozen;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>From plain text to words with roles: joins fixed phrases, repairs spelling, stems. One per message; not thread-safe.</summary>
internal sealed class WordReader(Spelling? spelling)
{
    /// <summary>A message of nothing but unknown words is noise: after so many repairs the rest is left as it stands.</summary>
    private const int MostRepairs = 120;

    private const int LongestPhrase = 5;

    private static readonly FrozenSet<string> StopVerbs = FrozenSet.Create("stopped", "stops", "stop", "quit", "ceased", "stopping");

    private static readonly FrozenSet<string> Openers = FrozenSet.Create("the", "my", "a", "its");

    private readonly Stems stems = new();
    private int repairs;

    public List<Word> Read(string letters)
    {
        var parts = Splitter.Split(letters).ConvertAll(p => English.Shorthand.GetValueOrDefault(p, p));
        var words = new List<Word>(parts.Count);
        for (var i = 0; i < parts.Count;)
            i += ReadAt(parts, i, words);
        return words;
    }

    /// <returns>How many parts were read.</returns>
    private int ReadAt(List<string> parts, int i, List<Word> words)
    {
        var part = parts[i];
        if (part is "." or ",")
            return Add(words, part, part == "." ? Role.HardBreak : Role.SoftBreak);
        if (IsInterjection(parts, i))
            return Add(words, part, Role.SoftBreak);
        if (StopsDoing(parts, i))
            return Turn(words);
        for (var n = Math.Min(LongestPhrase, parts.Count - i); n >= 1; n--)
        {
            var joined = n == 1 ? part : string.Join(' ', parts.GetRange(i, n));
            if (English.Phrases.TryGetValue(joined, out var role) && !(role == Role.Past && StopsDoing(parts, i + n - 1)))
            {
                words.Add(new Word(role == Role.Negator ? Negations.Of(joined) : joined, role));
                if (role == Role.SoftBreak && English.MeaningfulBreaks.Contains(joined))
                    words.Add(new Word(stems.Of(joined.Replace(" ", "", StringComparison.Ordinal)), Role.Content));
                return n;
            }
        }
        return Add(words, part, out var _);
    }

    /// <summary>"stopped slipping", "quit working".</summary>
    private static bool StopsDoing(List<string> parts, int i) =>
        StopVerbs.Contains(parts[i]) && i + 1 < parts.Count && parts[i + 1].Length > 4 && parts[i + 1].EndsWith("ing", StringComparison.Ordinal);

    /// <summary>"Won't stop pulling" keeps pulling; "stopped pulling" does not pull.</summary>
    private static int Turn(List<Word> words)
    {
        if (words.FindLastIndex(w => w.Role is not Role.Filler) is >= 0 and var last && words[last].Role == Role.Negator)
        {
            words[last] = new Word("keep", Role.Content);
            return 1;
        }
        return Add(words, Negations.Turning, Role.Negator);
    }

    private static int Add(List<Word> words, string text, Role role)
    {
        words.Add(new Word(text, role));
        return 1;
    }

    private int Add(List<Word> words, string part, out Role role)
    {
        role = English.Subjects.Contains(part) ? Role.Subject : English.Fillers.Contains(part) ? Role.Filler : Role.Content;
        words.Add(new Word(role == Role.Content ? Stem(part) : part, role));
        return 1;
    }

    /// <summary>The 'no' of "no the arm stays put" answers something; the 'no' of "no slack" denies.</summary>
    private static bool IsInterjection(List<string> parts, int i) =>
        parts[i] is "no" or "nope" && i + 1 < parts.Count && (English.Subjects.Contains(parts[i + 1]) || Openers.Contains(parts[i + 1]));

    private string Stem(string part)
    {
        var plain = part.EndsWith("'s", StringComparison.Ordinal) ? part[..^2] : part.Replace("'", "", StringComparison.Ordinal);
        if (spelling is null || repairs >= MostRepairs)
            return stems.Of(plain);
        var repaired = spelling.Knows(stems.Of(plain)) ? plain : spelling.Repair(plain);
        if (!ReferenceEquals(repaired, plain))
            repairs++;
        return stems.Of(repaired);
    }
}
