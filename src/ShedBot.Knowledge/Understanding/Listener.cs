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
    private readonly PhraseBook complaints, findings, facts, howTos, emergencies;

    private Listener(KnowledgeBase knowledge)
    {
        var words = knowledge.Words.Where(w => !Subjects.IsSubject(w)).ToList();
        lexicon = Lexicon.Of(words);
        subjects = new Subjects(knowledge.Words, t => lexicon.Concepts(new WordReader(null).Read(PlainText.Of(t).Letters)));
        complaints = Book(PhraseSource.Complaints(knowledge));
        findings = Book(PhraseSource.Findings(knowledge));
        facts = Book(PhraseSource.Facts(knowledge));
        howTos = Book(PhraseSource.HowTos(knowledge));
        emergencies = Book(PhraseSource.Emergencies(knowledge));
        spelling = new Spelling(PhraseSource.Vocabulary(knowledge));
    }

    /// <summary>Reads all phrases once; keep the listener as long as the knowledge.</summary>
    public static Listener For(KnowledgeBase knowledge) => new(knowledge);

    /// <param name="message">Anything. Of a longer one the first 4,000 characters are read, and only for emergencies.</param>
    /// <param name="context">What is open in the conversation; null when nothing is.</param>
    public Understood Understand(string message, ListeningContext? context = null)
    {
        var text = PlainText.Of(message);
        var words = lexicon.Concepts(new WordReader(spelling).Read(text.Letters));
        var statements = StatementReader.Read(words);
        var answer = context is { Options.Count: > 0 } ? AnswerListener.Hear(message, context.Options, lexicon) : null;
        var emergency = EmergencyEar.Hear(statements, emergencies);
        if (text.CutShort)
            return Nothing("too-long") with { Emergency = emergency };
        if (text.LetterCount == 0)
            return Nothing("empty") with { Answer = answer, NotMine = answer is null, NotMineBecause = answer is null ? "empty" : null };

        var about = subjects.Of(words);
        if (about.Contains(Subjects.OtherMachine) && !about.Contains(Subjects.OurMachine))
            return Nothing("other-machine") with { Emergency = emergency };
        var (affirmed, denied) = ComplaintEar.Hear(statements, complaints);
        var heard = new Understood(
            affirmed,
            denied,
            StateEar.Hear(statements, findings),
            StateEar.Hear(statements, facts),
            emergency,
            QuestionEar.Hear(text.Letters, statements, howTos),
            false,
            null)
        { Answer = answer };
        return IsSomething(heard) ? heard : Nothing(Reason(about, words));
    }

    private static bool IsSomething(Understood heard) =>
        heard.Emergency is not null || heard.HowTo is not null || heard.Answer is not null
        || heard.Complaints.Length + heard.Denied.Length + heard.Findings.Length + heard.Facts.Length > 0;

    private string Reason(HashSet<string> about, List<Word> words)
    {
        if (about.Contains(Subjects.OtherPart))
            return "other-part";
        if (words.Exists(w => w.Role == Role.Content && (complaints.Knows(w.Text) || findings.Knows(w.Text))) && !about.Contains(Subjects.SmallTalk))
            return "unclear";
        return "chatter";
    }

    private static Understood Nothing(string because) => new([], [], [], [], null, null, true, because);

    private PhraseBook Book(IEnumerable<(string Meaning, string Text)> phrases)
    {
        var reader = new WordReader(null);
        return new PhraseBook(
            phrases.Select(p => new Phrase(p.Meaning, Features(lexicon.Concepts(reader.Read(PlainText.Of(p.Text).Letters))))),
            subjects.OtherThings);
    }

    private static ImmutableArray<Feature> Features(List<Word> words) =>
        [.. StatementReader.Read(words).SelectMany(s => s.Features).Distinct()];
}
