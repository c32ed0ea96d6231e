using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>How riders say things: phrases come and go.</summary>
internal static class PhraseSheet
{
    public const string Name = "phrase", Of = "of", Rule = "rule", State = "state", Add = "add", Drop = "drop";

    public static Sheet Sheet { get; } = new(
        Name, "What riders say", "Words that the coach should understand, or should no longer take for this.",
        [
            new(Of, "What do the words mean?", "A trouble, an answer to a question, a 'how do I', or a word for a part.", QuestionKind.PickOne, Of)
            {
                Choices = _ => [new("complaint", "A trouble"), new("finding", "Something seen, felt or told"), new("fact", "A fact of the bike"), new("how-to", "A question: how do I ..."), new("word", "Another word for a part")],
            },
            new(Rule, "Which one?", "Pick it, or type some words of it.", QuestionKind.PickOne, Rule) { Choices = Rules },
            new(State, "Which answer?", "How it then is.", QuestionKind.PickOne, State) { Applies = c => c.One(Of) is "finding" or "fact", Choices = States },
            new(Add, "Which words are to be understood so? One way a line, or skip.", "As riders say them: clutch won't let go", QuestionKind.Lines, "phrases") { Required = false },
            new(Drop, "Which of these should no longer count? Skip when all are good.", "What is taken for this and means something else.", QuestionKind.PickSeveral, "phrases")
            {
                Required = false, Applies = c => !Phrases(c).IsEmpty, Choices = c => Existing.Phrases(Phrases(c)),
            },
            .. CreditQuestions.All,
        ])
    { Write = Write };

    private static Draft Write(SheetContext context, Credit credit)
    {
        var here = Phrases(context);
        var (kind, path) = context.One(Of) switch
        {
            "complaint" => (RuleKind.Complaint, RulePath.Of("riders say")),
            "finding" => (RuleKind.Finding, RulePath.Of("states", context.One(State), "riders say")),
            "fact" => (RuleKind.Fact, RulePath.Of("values", context.One(State), "riders say")),
            "how-to" => (RuleKind.HowTo, RulePath.Of("riders ask")),
            _ => (RuleKind.Word, RulePath.Of("riders say")),
        };
        var key = new RuleKey(kind, context.One(Rule));
        var gone = context.All(Drop);
        return new Draft(
            $"What riders say: {CleanText.OneLine(Rules(context).FirstOrDefault(r => r.Value == key.Id)?.Says ?? key.Id, 80)}",
            [
                .. here.Where(p => gone.Contains(Existing.Mark(p))).Select(p => new MendList(key, path, null, p, credit)),
                .. context.All(Add).Where(p => !here.Contains(p, StringComparer.Ordinal)).Select(p => new MendList(key, path, p, null, credit)),
            ]);
    }

    private static ImmutableArray<Choice> Rules(SheetContext context) => context.One(Of) switch
    {
        "complaint" => Existing.Complaints(context.Knowledge),
        "finding" => Existing.Findings(context.Knowledge),
        "fact" => Existing.Facts(context.Knowledge),
        "how-to" => Existing.HowTos(context.Knowledge),
        "word" => Existing.Words(context.Knowledge),
        _ => [],
    };

    private static ImmutableArray<Choice> States(SheetContext context) => context.One(Of) == "fact"
        ? Existing.Values(context.Knowledge, context.One(Rule))
        : Existing.States(context.Knowledge, context.One(Rule));

    private static ImmutableArray<string> Phrases(SheetContext context)
    {
        var id = context.One(Rule);
        return context.One(Of) switch
        {
            "complaint" => context.Knowledge.Complaints.GetValueOrDefault(id)?.RidersSay ?? [],
            "finding" => context.Knowledge.Findings.GetValueOrDefault(id)?.States.FirstOrDefault(s => s.Id == context.One(State))?.RidersSay ?? [],
            "fact" => context.Knowledge.Facts.GetValueOrDefault(id)?.Values.FirstOrDefault(v => v.Id == context.One(State))?.RidersSay ?? [],
            "how-to" => context.Knowledge.HowTos.GetValueOrDefault(id)?.RidersAsk ?? [],
            "word" => [.. context.Knowledge.Words.Where(w => w.Concept == id).SelectMany(w => w.RidersSay)],
            _ => [],
        };
    }
}
