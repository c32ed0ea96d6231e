using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Answers;
using ShedBot.Knowledge.Understanding.Matching;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding;

/// <summary>Hears which answer is meant when a rider writes words in place of choosing an option. Pure and safe to share.</summary>
public static class AnswerListener
{
    private const double Fits = 0.5, Softened = 0.8;

    /// <param name="words">What the rider wrote.</param>
    /// <param name="options">The answers that are open, in the order in which they are shown; may be empty.</param>
    /// <returns>The answer, or null when the words fit none: they are then a message of their own.</returns>
    public static HeardAnswer? Hear(string words, IReadOnlyList<AnswerOption> options) => Hear(words, options, null);

    /// <param name="lexicon">The club's own words for things; null to compare plain words only.</param>
    internal static HeardAnswer? Hear(string words, IReadOnlyList<AnswerOption> options, Lexicon? lexicon)
    {
        var text = PlainText.Of(words).Letters.Trim();
        if (text.Length is 0 or > 400)
            return null;
        var parts = Splitter.Split(text).FindAll(p => p is not ("." or ","));
        var plain = parts.Count == 0 ? text : string.Join(' ', parts);
        return ByPlace(parts, options)
            ?? ByLabel(plain, options)
            ?? ByKind(plain, parts, whole: true)
            ?? YesOrNo(parts, plain, options)
            ?? ByMeaning(text, options, lexicon)
            ?? ByKind(plain, parts, whole: false);
    }

    private static HeardAnswer? ByPlace(List<string> parts, IReadOnlyList<AnswerOption> options)
    {
        if (parts.Count is 0 or > 7 || options.Count == 0)
            return null;
        var pointing = parts.FindAll(p => !AnswerWords.AroundPlaces.Contains(p));
        if (pointing.Count == 0 && parts.Contains("one") && parts.Exists(p => p is "option" or "number" or "answer"))
            pointing = ["one"];
        if (parts is ["one"] or ["a"])
            pointing = parts;
        if (pointing.Count != 1 || !AnswerWords.Places.TryGetValue(pointing[0], out var place))
            return null;
        var at = place < 0 ? options.Count - 1 : place;
        return at < options.Count ? new HeardAnswer(AnswerKind.Option, options[at].Id, 1) : null;
    }

    private static HeardAnswer? ByLabel(string plain, IReadOnlyList<AnswerOption> options)
    {
        foreach (var option in options)
        {
            if (option.Phrases.Prepend(option.Label).Any(l => string.Join(' ', Splitter.Split(PlainText.Of(l).Letters).Where(p => p is not ("." or ","))) == plain))
                return new HeardAnswer(AnswerKind.Option, option.Id, 1);
        }
        return null;
    }

    private static HeardAnswer? ByKind(string plain, List<string> parts, bool whole)
    {
        var bare = string.Join(' ', parts.SkipWhile(IsLeadIn).Where(p => !IsPolite(p)));
        (AnswerKind Kind, int Length) best = default;
        foreach (var (kind, phrases) in AnswerWords.Kinds)
        {
            foreach (var phrase in phrases)
            {
                var said = whole
                    ? bare == phrase || plain == phrase
                    : bare.StartsWith(phrase + " ", StringComparison.Ordinal) && (phrase.Contains(' ') || kind is AnswerKind.Why or AnswerKind.ShowMe or AnswerKind.NotSure);
                if (said && phrase.Length > best.Length)
                    best = (kind, phrase.Length);
            }
        }
        return best.Length == 0 || !whole && best.Kind is AnswerKind.Stop ? null : new HeardAnswer(best.Kind, null, whole ? 1 : 0.7);
    }

    private static bool IsLeadIn(string part) => part is "still" or "nope" or "nah" or "i" or "im" or "i'm" or "well" or "um" or "erm" or "er" or "hmm" or "sorry" or "oh" or "honestly" or "but" or "and" or "so" or "just" or "really" or "actually" or "ok" or "okay" or "uh" or "can" or "could" or "please" or "lets" or "let's" or "we" or "id" or "i'd" or "hang" or "wait";

    private static bool IsPolite(string part) => part is "please" or "pls" or "mate" or "sorry" or "tbh" or "honestly" or "really" or "you" or "thanks" or "lol";

    /// <summary>A bare yes or no, where exactly one option begins that way or is called so.</summary>
    private static HeardAnswer? YesOrNo(List<string> parts, string plain, IReadOnlyList<AnswerOption> options)
    {
        var hard = string.Join(' ', parts.Where(p => !AnswerWords.Softeners.Contains(p)));
        var score = hard.Length == plain.Length ? 1 : Softened;
        var says = IsIn(AnswerWords.Yes, plain, hard) ? "yes" : IsIn(AnswerWords.No, plain, hard) ? "no" : null;
        if (says is null)
            return null;
        var meant = options.Where(o => o.Id == says || Begins(o.Label, says)).ToList();
        return meant.Count == 1 ? new HeardAnswer(AnswerKind.Option, meant[0].Id, score) : null;
    }

    private static bool IsIn(FrozenSet<string> words, string plain, string hard) => words.Contains(plain) || hard.Length > 0 && words.Contains(hard);

    private static bool Begins(string label, string word) =>
        Splitter.Split(PlainText.Of(label).Letters) is [var first, ..] && first == word;

    private static HeardAnswer? ByMeaning(string text, IReadOnlyList<AnswerOption> options, Lexicon? lexicon)
    {
        var said = Features(text, lexicon, Vocabulary(options));
        if (said.Length == 0 || options.Count == 0)
            return null;
        var book = new PhraseBook(
            options.SelectMany(o => o.Phrases.Prepend(o.Label).SelectMany(Alternatives).Select(p => new Phrase(o.Id, Features(p, lexicon, null)))),
            FrozenSet<string>.Empty, FrozenSet<string>.Empty, FrozenSet<string>.Empty, [], modest: true);
        var ranked = book.Compare(said).OrderByDescending(m => m.Affirmed).ToList();
        if (ranked.Count == 0 || ranked[0].Affirmed < Fits || ranked.Count > 1 && ranked[0].Affirmed - ranked[1].Affirmed < 0.05)
            return null;
        return new HeardAnswer(AnswerKind.Option, ranked[0].Meaning, Math.Min(1, ranked[0].Affirmed));
    }

    /// <summary>"It bends or the cover lifts" is said by either half, and by the whole.</summary>
    private static IEnumerable<string> Alternatives(string label) => label.Split(" or ").Append(label).Distinct();

    private static Spelling Vocabulary(IReadOnlyList<AnswerOption> options) =>
        new([.. options.SelectMany(o => o.Phrases.Prepend(o.Label)).SelectMany(p => Splitter.Split(PlainText.Of(p).Letters)).Distinct()]);

    private static ImmutableArray<Feature> Features(string text, Lexicon? lexicon, Spelling? spelling)
    {
        var words = new WordReader(spelling).Read(PlainText.Of(text).Letters);
        return [.. StatementReader.Read(lexicon is null ? words : lexicon.Concepts(words)).SelectMany(s => s.Features).Distinct()];
    }
}
