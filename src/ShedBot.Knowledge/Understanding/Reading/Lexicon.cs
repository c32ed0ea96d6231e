using System.Collections.Frozen;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>
/// The club's words for things: "squeezer" for the lever. Terms are brought to concepts in three rounds, each on what the round before
/// made of the text: single words, then runs of words, then runs that hold a 'not'. So "won't disengage" is known from
/// "won't release" once "disengage" is known as a word for "release".
/// </summary>
internal sealed class Lexicon
{
    private readonly FrozenDictionary<string, Term[]>[] rounds;

    private Lexicon(FrozenDictionary<string, Term[]>[] rounds) => this.rounds = rounds;

    private sealed record Term(string[] Words, string Concept);

    /// <param name="rules">Where two concepts claim a term, the earlier rule has it.</param>
    public static Lexicon Of(IReadOnlyCollection<WordRule> rules)
    {
        var reader = new WordReader(null);
        var terms = rules
            .SelectMany(r => r.RidersSay.Prepend(r.Concept).Select(t => (Term: TermOf(reader.Read(PlainText.Of(t).Letters)), r.Concept)))
            .Where(t => t.Term.Exists(w => w.Role == Role.Content))
            .ToList();
        var built = new List<FrozenDictionary<string, Term[]>>();
        foreach (var round in new[] { 0, 1, 2 })
        {
            var so = new Lexicon([.. built]);
            built.Add(terms.Where(t => RoundOf(t.Term) == round)
                .Select(t => new Term([.. so.Concepts(t.Term).Select(w => w.Text)], t.Concept))
                .DistinctBy(t => string.Join(' ', t.Words))
                .GroupBy(t => t.Words[0])
                .ToFrozenDictionary(g => g.Key, g => g.OrderByDescending(t => t.Words.Length).ToArray()));
        }
        return new Lexicon([.. built]);
    }

    /// <summary>Puts concepts in the place of the terms that are found; words between breaks only, fillers skipped.</summary>
    public List<Word> Concepts(List<Word> words) => rounds.Aggregate(words, Round);

    private static List<Word> Round(List<Word> words, FrozenDictionary<string, Term[]> terms)
    {
        var read = new List<Word>(words.Count);
        for (var i = 0; i < words.Count;)
        {
            var (term, end) = IsMeaningful(words[i]) ? Longest(words, i, terms) : (null, i + 1);
            read.Add(term is null ? words[i] : new Word(term.Concept, Role.Content));
            i = term is null ? i + 1 : end;
        }
        return read;
    }

    private static (Term? Term, int End) Longest(List<Word> words, int start, FrozenDictionary<string, Term[]> terms)
    {
        foreach (var term in terms.GetValueOrDefault(TextOf(words[start]), []))
        {
            var at = start;
            var matched = 0;
            for (; at < words.Count && matched < term.Words.Length; at++)
            {
                if (words[at].Role is Role.HardBreak or Role.SoftBreak || IsMeaningful(words[at]) && TextOf(words[at]) != term.Words[matched])
                    break;
                if (IsMeaningful(words[at]))
                    matched++;
            }
            if (matched == term.Words.Length)
                return (term, at);
        }
        return (null, start + 1);
    }

    /// <summary>Whether words are left out in reading that make a difference: "about" of "swings about".</summary>
    public static bool LosesMeaning(List<Word> words) => words.Exists(w => !IsMeaningful(w) && !English.Weightless.Contains(w.Text));

    private static string TextOf(Word word) => word.Role == Role.Negator ? Negations.Plain : word.Text;

    private static int RoundOf(List<Word> term) => term.Exists(w => w.Role == Role.Negator) ? 2 : term.Count > 1 ? 1 : 0;

    /// <summary>The words of a term that count; none where only one is left and others were lost that made the difference: "swings about".</summary>
    private static List<Word> TermOf(List<Word> words)
    {
        var meaningful = words.FindAll(IsMeaningful);
        return meaningful.Count == 1 && words.Count > 1
            && (English.LightWords.Contains(meaningful[0].Text) || LosesMeaning(words))
            ? [] : meaningful;
    }

    private static bool IsMeaningful(Word word) => word.Role is Role.Content or Role.Negator;
}
