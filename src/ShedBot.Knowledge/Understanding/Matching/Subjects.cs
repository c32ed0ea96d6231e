using System.Collections.Frozen;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>
/// The word rules that do not bring words together but say what a message is about. They keep their own words, so "brake" stays a
/// brake; their concepts are the seven names below.
/// </summary>
internal sealed class Subjects
{
    public const string OtherMachine = "other machine", OtherPart = "other part", OurMachine = "our machine", OurPart = "our part", OurTrouble = "our trouble", Circumstance = "circumstance", SmallTalk = "small talk";

    private static readonly FrozenSet<string> Names = FrozenSet.Create(OtherMachine, OtherPart, OurMachine, OurPart, OurTrouble, Circumstance, SmallTalk);

    /// <summary>"Sounds like a tractor" is not about a tractor, nor is "the car in front".</summary>
    private const int WindowBefore = 4, WindowAfter = 3;

    private static readonly FrozenSet<string> Likeness = FrozenSet.Create("like", "than", "as", "behind", "past", "from");

    private readonly FrozenDictionary<string, (string[] Words, string Subject)[]> terms;

    public Subjects(IEnumerable<WordRule> words, Func<string, List<Word>> read)
    {
        terms = words.Where(IsSubject)
            .SelectMany(r => r.RidersSay.Select(t => (Words: read(t).Where(Counts).Select(w => w.Text).ToArray(), Subject: r.Concept)))
            .Where(t => t.Words.Length > 0)
            .GroupBy(t => t.Words[0])
            .ToFrozenDictionary(g => g.Key, g => g.OrderByDescending(t => t.Words.Length).ToArray());
        OtherThings = terms.Values.SelectMany(t => t).Where(t => t.Subject is OtherPart or OtherMachine && t.Words.Length == 1)
            .Select(t => t.Words[0]).ToFrozenSet();
        Parts = terms.Values.SelectMany(t => t).Where(t => t.Subject is OurPart && t.Words.Length == 1).Select(t => t.Words[0]).ToFrozenSet();
        Props = terms.Values.SelectMany(t => t).Where(t => t.Subject is OurPart or Circumstance && t.Words.Length == 1)
            .Select(t => t.Words[0]).ToFrozenSet();
    }

    /// <summary>Parts of the clutch.</summary>
    public FrozenSet<string> Parts { get; }

    /// <summary>Parts and circumstances: what a trouble is told with, and never the trouble itself.</summary>
    public FrozenSet<string> Props { get; }

    /// <summary>Words that name something that is not the clutch.</summary>
    public FrozenSet<string> OtherThings { get; }

    public static bool IsSubject(WordRule rule) => Names.Contains(rule.Concept);

    /// <summary>What the words speak of, each subject once.</summary>
    public HashSet<string> Of(List<Word> words)
    {
        var found = new HashSet<string>();
        for (var i = 0; i < words.Count; i++)
        {
            foreach (var (term, subject) in terms.GetValueOrDefault(words[i].Text, []))
            {
                if (!Matches(words, i, term, out var end))
                    continue;
                if (subject != OtherMachine || !IsLikeness(words, i))
                    found.Add(subject);
                i = end - 1;
                break;
            }
        }
        return found;
    }

    /// <summary>
    /// What is left of a message when the sentences about other machines are taken out, if it still speaks of the clutch: a story that
    /// mentions a van in passing is not about the van. Null when nothing of ours is left.
    /// </summary>
    public List<Word>? WithoutOtherMachines(List<Word> words)
    {
        var kept = new List<Word>();
        var from = 0;
        for (var at = 0; at <= words.Count; at++)
        {
            if (at < words.Count && words[at] is not { Role: Role.HardBreak, Text: "." })
                continue;
            var sentence = words.GetRange(from, Math.Min(at + 1, words.Count) - from);
            if (!Of(sentence).Contains(OtherMachine))
                kept.AddRange(sentence);
            from = at + 1;
        }
        return Of(kept).Contains(OurPart) ? kept : null;
    }

    private static bool Matches(List<Word> words, int start, string[] term, out int end)
    {
        var matched = 0;
        for (end = start; end < words.Count && matched < term.Length; end++)
        {
            if (!Counts(words[end]))
                continue;
            if (words[end].Text != term[matched])
                return false;
            matched++;
        }
        return matched == term.Length;
    }

    private static bool IsLikeness(List<Word> words, int at)
    {
        for (var i = Math.Max(0, at - WindowBefore); i < at; i++)
        {
            if (Likeness.Contains(words[i].Text))
                return true;
        }
        return words.Skip(at + 1).Take(WindowAfter).Any(w => w.Text is "front" or "ahead" or "behind");
    }

    private static bool Counts(Word word) => word.Role is Role.Content or Role.Negator;
}
