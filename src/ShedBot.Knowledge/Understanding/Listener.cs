using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Matching;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding;

/// <summary>
/// Understands what riders write, from the phrases of the rules and the club's own words for things. Pure; safe to share between
/// threads; the same message always gives the same answer. Never throws on a message, whatever it holds.
/// </summary>
public sealed class Listener
{
    private readonly Lexicon lexicon;
    private readonly Spelling spelling;
    private readonly Subjects subjects;
    private readonly Signs signs;
    private readonly FrozenSet<string> concepts;
    private readonly EitherEar eithers;
    private readonly PhraseBook complaints, findings, facts, howTos, emergencies;
    private readonly KnowledgeBase heardFrom;

    private Listener(KnowledgeBase knowledge)
    {
        heardFrom = knowledge;
        var words = knowledge.Words.Where(w => !Subjects.IsSubject(w) && !Signs.IsSign(w, knowledge)).ToList();
        signs = new Signs(knowledge);
        lexicon = Lexicon.Of(words);
        concepts = words.Select(w => w.Concept).ToFrozenSet();
        subjects = new Subjects(knowledge.Words, t => lexicon.Concepts(new WordReader(null).Read(PlainText.Of(t).Letters)));
        var (c, f, p, h, e) = (
            Read(PhraseSource.Complaints(knowledge)), Read(PhraseSource.Findings(knowledge), strict: true), Read(PhraseSource.Facts(knowledge), strict: true),
            Read(PhraseSource.HowTos(knowledge)), Read(PhraseSource.Emergencies(knowledge), strict: true, sign: true));
        complaints = Book(c, [.. h, .. e], subjects.Props);
        findings = Book(Precise(f, c), [.. c, .. e]);
        facts = Book(p, [.. c, .. f, .. e]);
        howTos = Book(h, [.. c, .. f, .. e]);
        emergencies = Book(e, [.. c, .. f, .. h], whole: true);
        eithers = new EitherEar(knowledge.Eithers);
        spelling = new Spelling(PhraseSource.Vocabulary(knowledge));
    }

    /// <summary>Reads all phrases once; keep the listener as long as the knowledge.</summary>
    public static Listener For(KnowledgeBase knowledge) => new(knowledge);

    /// <summary>
    /// The same, or the other listener itself where the rules it was made for have the same words and phrases: a listener holds megabytes, and most
    /// of what clubs write anew are causes, checks and strengths, which riders' words do not depend on.
    /// </summary>
    public static Listener For(KnowledgeBase knowledge, Listener like) => PhraseSource.SameIn(knowledge, like.heardFrom) ? like : new(knowledge);

    /// <param name="message">Anything. Of a longer one the first 4,000 characters are read, and only for emergencies.</param>
    /// <param name="context">What is open in the conversation; null when nothing is.</param>
    public Understood Understand(string message, ListeningContext? context = null)
    {
        var text = PlainText.Of(message);
        var words = lexicon.Concepts(new WordReader(spelling).Read(text.Letters));
        var statements = StatementReader.Read(words);
        var answer = context is { Options.Count: > 0 } ? AnswerListener.Hear(message, context.Options, lexicon) : null;
        var complaintReadings = SpanChooser.ReadAll(statements, complaints);
        var troubles = ComplaintEar.Choose(complaintReadings);
        var emergency = Emergency(text.Letters, statements, troubles);
        if (text.CutShort)
            return Nothing("too-long") with { Emergency = emergency };
        if (text.LetterCount == 0)
            return Nothing("empty") with { Answer = answer, NotMine = answer is null, NotMineBecause = answer is null ? "empty" : null };

        var about = subjects.Of(words);
        if (about.Contains(Subjects.OtherMachine) && !about.Contains(Subjects.OurMachine))
        {
            if (subjects.WithoutOtherMachines(words) is not { } ours)
                return Nothing("other-machine") with { Emergency = emergency };
            (about, statements) = (subjects.Of(ours), StatementReader.Read(ours));
            complaintReadings = SpanChooser.ReadAll(statements, complaints);
            troubles = ComplaintEar.Choose(complaintReadings);
        }
        var heard = Hear(text, statements, complaintReadings, troubles) with { Emergency = emergency, Answer = answer, SpokenAgainst = [.. signs.Excluded(text.Letters)] };
        if (statements.Any(s => s.Mood == Mood.Present) && eithers.Hear(text.Letters, spelling) is { } either)
            heard = With(heard, either);
        if (!IsOurs(about) && (about.Contains(Subjects.OtherPart) || about.Contains(Subjects.SmallTalk)))
            heard = heard with { Complaints = [.. heard.Complaints.Where(c => c.Score >= Hearing.InOtherCompany)], Findings = [] };
        return IsSomething(heard) ? heard : Nothing(Reason(about, words)) with { Either = heard.Either };
    }

    /// <summary>What a message that was not understood may mean: complaints and findings by the same scores, however low. For a human to choose from, never to go by.</summary>
    /// <param name="most">At most so many.</param>
    /// <returns>Likeliest first; empty when no word of it is in any phrase.</returns>
    public ImmutableArray<HeardGuess> Guess(string message, int most)
    {
        var statements = StatementReader.Read(lexicon.Concepts(new WordReader(spelling).Read(PlainText.Of(message).Letters)));
        return
        [
            .. new[] { complaints, findings }.SelectMany(book => SpanChooser.ReadAll(statements, book)).SelectMany(r => r.Matches)
                .GroupBy(m => m.Meaning, StringComparer.Ordinal)
                .Select(g => (Parts: g.Key.Split(PhraseSource.Joint), Score: g.Max(m => m.Affirmed)))
                .Where(g => g.Score > 0)
                .Select(g => new HeardGuess(g.Parts[0], g.Parts.Length > 1 ? g.Parts[1] : null, ComplaintEar.Rounded(g.Score)))
                .OrderByDescending(g => g.Score).ThenBy(g => g.Subject, StringComparer.Ordinal).ThenBy(g => g.State, StringComparer.Ordinal)
                .Take(most),
        ];
    }

    /// <summary>"The clutch lever does nothing" is plain enough; "the lever does nothing, the brakes are fine" is not, nor is "it does not stop when I pull the lever".</summary>
    private Understood With(Understood heard, EitherHeard either) => either.Named switch
    {
        { } named when !either.Asks && heardFrom.Complaints.ContainsKey(named) =>
            heard is { Complaints: [], Emergency: null, HowTo: null } ? heard with { Complaints = [new Heard(named, Hearing.Named)] } : heard,
        { } named when heard.Emergency == named => heard,
        _ => heard with { Either = either.Rule },
    };

    private string? Emergency(string letters, ImmutableArray<Statement> statements, List<SpanReading> troubles)
    {
        var excluded = signs.Excluded(letters);
        var others = signs.WithoutOthers(letters).Where(o => !excluded.Contains(o.Emergency)).ToList();
        var heard = EmergencyEar.Hear(
            signs.With(statements, letters), emergencies, troubles, id => !excluded.Contains(id) && !others.Exists(o => o.Emergency == id));
        return EmergencyEar.Plainest(heard.Concat(others.SelectMany(o => Rest(o.Emergency, o.Letters))));
    }

    private IEnumerable<Match> Rest(string emergency, string letters)
    {
        var statements = StatementReader.Read(lexicon.Concepts(new WordReader(spelling).Read(letters)));
        var troubles = ComplaintEar.Choose(SpanChooser.ReadAll(statements, complaints));
        return EmergencyEar.Hear(signs.With(statements, letters), emergencies, troubles, id => id == emergency);
    }

    private Understood Hear(PlainText text, ImmutableArray<Statement> statements, ImmutableArray<SpanReading> readings, List<SpanReading> troubles)
    {
        var (affirmed, denied) = ComplaintEar.Hear(readings, troubles);
        var question = QuestionEar.Hear(text.Letters, statements, howTos);
        // "How do I use the puller" asks for the puller, although it sounds a little like one that stripped.
        if (question is not null)
            affirmed = [.. affirmed.Where(c => c.Score >= Hearing.BesideQuestion)];
        var told = question is null || affirmed.Length > 0 ? StateEar.Hear(statements, findings) : [];
        return new Understood(
            affirmed, denied, told, StateEar.Hear(statements, facts), null, question, false, null);
    }

    private static bool IsSomething(Understood heard) =>
        heard.Emergency is not null || heard.HowTo is not null || heard.Answer is not null
        || heard.Complaints.Length + heard.Denied.Length + heard.Findings.Length + heard.Facts.Length > 0;

    private static bool IsOurs(HashSet<string> about) =>
        about.Contains(Subjects.OurPart) || about.Contains(Subjects.OurTrouble) || about.Contains(Subjects.OurMachine);

    private static string Reason(HashSet<string> about, List<Word> words) =>
        about.Contains(Subjects.OtherPart) ? "other-part"
        : about.Contains(Subjects.SmallTalk) ? "chatter"
        : IsOurs(about) || words.Exists(w => Troubles.Contains(w.Text)) ? "unclear"
        : "chatter";

    /// <summary>Words that say that something is wrong, and not what.</summary>
    private static readonly FrozenSet<string> Troubles = FrozenSet.Create("problem", "issu", "troubl", "work", "broken", "wrong", "help", "fault", "bust", "stuck", "snap");

    private static Understood Nothing(string because) => new([], [], [], [], null, null, true, because);

    private PhraseBook Book(List<Phrase> phrases, List<Phrase> background, FrozenSet<string>? props = null, bool whole = false) =>
        new(phrases, subjects.OtherThings, concepts, props ?? FrozenSet<string>.Empty, background, modest: whole);

    /// <param name="strict">Leaves out phrases of which one word would be left that says less: "it drags now and then".</param>
    /// <param name="sign">Reads signs of the whole text too.</param>
    private List<Phrase> Read(IEnumerable<(string Meaning, string Text)> phrases, bool strict = false, bool sign = false)
    {
        var reader = new WordReader(null);
        ImmutableArray<Feature> Read(string letters) => Features(lexicon.Concepts(reader.Read(letters)));
        return
        [
            .. phrases.Select(p => (p.Meaning, PlainText.Of(p.Text).Letters))
                .Select(p => (Phrase: sign ? signs.With(p.Meaning, p.Letters, Read) : new Phrase(p.Meaning, Read(p.Letters)), Words: reader.Read(p.Letters)))
                .Where(p => !strict || p.Phrase.Features.Length > 1 || p.Phrase.Features is [{ Denied: true }] || !Lexicon.LosesMeaning(p.Words))
                .Select(p => p.Phrase),
        ];
    }

    /// <summary>
    /// Leaves out phrases of findings that read just as a complaint does ("it feels spongy"), or that name parts and say nothing of them:
    /// they would be heard from bare hints.
    /// </summary>
    private List<Phrase> Precise(List<Phrase> findings, List<Phrase> complaints) =>
        findings.FindAll(f =>
            f.Features.Any(x => x.Denied || !subjects.Parts.Contains(x.Concept))
            && !complaints.Exists(c => c.Features.Length == f.Features.Length && c.Features.All(f.Features.Contains)));

    private static ImmutableArray<Feature> Features(List<Word> words) =>
        [.. StatementReader.Read(words).SelectMany(s => s.Features).Distinct()];
}
