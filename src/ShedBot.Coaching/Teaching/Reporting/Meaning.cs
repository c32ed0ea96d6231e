using System.Collections.Immutable;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>What words of riders can mean: a trouble, how something is, or a question 'how do I'.</summary>
/// <param name="Of">As the sheet of phrases calls its kind.</param>
/// <param name="State">Of a finding; empty otherwise.</param>
/// <param name="Says">What it is called.</param>
internal sealed record Meaning(string Of, string Rule, string State, string Says, string Detail)
{
    private const string Trouble = "complaint", Sign = "finding", HowTo = "how-to";

    /// <summary>A short name, since ids together are too long for an option.</summary>
    public string Mark => Existing.Mark($"{Of}/{Rule}/{State}");

    public Choice Choice => new(Mark, Says, Detail);

    /// <summary>All there are, troubles first.</summary>
    public static ImmutableArray<Meaning> All(KnowledgeBase knowledge) =>
    [
        .. Existing.Complaints(knowledge).Select(c => new Meaning(Trouble, c.Value, "", c.Says, c.Detail)),
        .. Existing.Findings(knowledge).SelectMany(f => Existing.States(knowledge, f.Value).Select(s => new Meaning(Sign, f.Value, s.Value, $"{f.Says}: {s.Says}", ""))),
        .. Existing.HowTos(knowledge).Select(h => new Meaning(HowTo, h.Value, "", $"How do I: {h.Says}", h.Detail)),
    ];

    public static Meaning? Find(KnowledgeBase knowledge, string mark) => All(knowledge).FirstOrDefault(m => m.Mark == mark);

    /// <returns>Null where the rules have it no more.</returns>
    public static Meaning? Guessed(KnowledgeBase knowledge, HeardGuess guess) =>
        All(knowledge).FirstOrDefault(m => m.Rule == guess.Subject && m.State == (guess.State ?? "") && m.Of == (guess.State is null ? Trouble : Sign));

    public bool IsStateOf(string finding) => Of == Sign && Rule == finding;

    /// <summary>The sheet's answers: what is known, and what need not be asked passed over.</summary>
    /// <param name="meaning">Null when it is to be asked.</param>
    /// <param name="phrase">Not empty.</param>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> Given(Meaning? meaning, string phrase)
    {
        var given = Empty.Add(PhraseSheet.Add, [phrase]).Add(PhraseSheet.Drop, []).Add(CreditQuestions.Source, []).Add(CreditQuestions.SaidBy, []);
        if (meaning is null) return given;
        given = given.Add(PhraseSheet.Of, [meaning.Of]).Add(PhraseSheet.Rule, [meaning.Rule]);
        return meaning.State.Length > 0 ? given.Add(PhraseSheet.State, [meaning.State]) : given;
    }

    private static ImmutableSortedDictionary<string, ImmutableArray<string>> Empty { get; } =
        ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal);
}
