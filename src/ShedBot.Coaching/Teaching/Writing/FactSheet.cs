using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A fact of the bike that makes a cause likelier or less likely: a new one with its answers, or one that is there and moves another cause.</summary>
internal static class FactSheet
{
    private const string Fact = "fact", Called = "fact-called", Ask = "fact-ask", Keeps = "fact-keeps", Answer = "fact-answer", Moves = "fact-moves";

    private const int MostAnswers = 4, LeastAnswers = 2, MostMoves = 2;

    public static Sheet Sheet { get; } = new(
        "fact", "A fact of the bike", "What is fitted, how old it is, how it is kept: asked once, and then it makes a cause likelier or less likely. It never proves one.",
        [
            new(Fact, "Which fact of the bike?", "Pick one that is asked already, or say that it is new.", QuestionKind.PickOne, Fact)
            {
                Choices = c => [new Choice(Choice.New, "A fact that nobody asks for yet"), .. Existing.Facts(c.Knowledge)],
            },
            New(Called, "What is it? A few words.", "Such as: which lever is fitted", QuestionKind.Text, "fact-new") with { Longest = 200 },
            New(Ask, "What is the rider asked?", "One short question: Is it the lever of the kit, or another one?", QuestionKind.Text, "fact-new"),
            New(Keeps, "After how many days is it to be asked again?", "What hardly ever changes: 1000. What wears: 60.", QuestionKind.Number, "fact-new") with { Least = 1, Most = 3650, Unit = "days" },
            .. Enumerable.Range(1, MostAnswers).SelectMany(Answers), .. Enumerable.Range(1, MostMoves).SelectMany(Moved), .. CreditQuestions.All,
        ])
    { Write = Write };

    private static IEnumerable<Question> Answers(int number)
    {
        var (says, often, page) = (Numbered(Answer, number), Numbered(Answer, number) + "-often", Numbered(Answer, number));
        bool Applies(SheetContext c) => c.IsNew(Fact) && (number == 1 || c.Has(Numbered(Answer, number - 1)));
        yield return new Question(
            says,
            number == 1 ? "The usual answer, as a rider would give it?" : number == 2 ? "Another answer, as a rider would give it?" : "One more answer? Skip when that was all.",
            number == 1 ? "Such as: The lever of the kit" : "Such as: Another one", QuestionKind.Text, page)
        {
            Applies = Applies,
            Required = number <= LeastAnswers,
            Longest = 200,
        };
        yield return new Question(often, "On how many bikes is it so?", "Of those that come with a trouble.", QuestionKind.Scale, page + "-often")
        {
            Applies = c => Applies(c) && c.Has(says),
            Choices = _ => Scales.Chance,
            Asks = c => $"\"{c.One(says)}\": on how many of the bikes that come with a trouble is it so?",
        };
    }

    private static IEnumerable<Question> Moved(int number)
    {
        var (cause, value, times) = (Numbered(Moves, number), Numbered(Moves, number) + "-value", Numbered(Moves, number) + "-times");
        bool Applies(SheetContext c) => c.Has(Fact) && (number == 1 || c.Has(Numbered(Moves, number - 1)));
        yield return new Question(
            cause, number == 1 ? "Which cause does it make likelier or less likely?" : "Any other cause? Skip when that was all.", "What is wrong. A fact that moves no cause is asked for nothing.", QuestionKind.PickOne, cause)
        {
            Applies = Applies,
            Required = number == 1,
            Choices = c => Existing.Faults(c.Knowledge),
        };
        yield return new Question(value, "With which answer?", "The answer that makes the difference.", QuestionKind.PickOne, value)
        {
            Applies = c => Applies(c) && c.Has(cause),
            Choices = Values,
        };
        yield return new Question(times, "How much does it move the cause?", "Beside bikes on which it is not so.", QuestionKind.Scale, times)
        {
            Applies = c => Applies(c) && c.Has(cause),
            Choices = _ => Scales.Times,
            Asks = c => $"With \"{Values(c).FirstOrDefault(v => v.Value == c.One(value))?.Says}\": how much likelier or less likely is it that {c.Knowledge.Faults.GetValueOrDefault(c.One(cause))?.Is}?",
        };
    }

    private static Draft Write(SheetContext context, Credit credit)
    {
        var changes = ImmutableArray.CreateBuilder<RuleChange>();
        var fact = context.One(Fact);
        ImmutableArray<(string Question, string Id)> answers = [];
        if (context.IsNew(Fact))
        {
            fact = new NewIds(context.Knowledge).For(context.One(Called));
            answers = Ids(context);
            changes.Add(new PutRule(new RuleKey(RuleKind.Fact, fact), new RuleItem()
                .Add("id", fact).Add("called", context.One(Called)).Add("ask", context.One(Ask))
                .Add("values", answers.Select(a => new RuleItem().Add("id", a.Id).Add("says", context.One(a.Question)).Add("how often", context.One(a.Question + "-often"))))
                .Add("keeps for days", context.One(Keeps)).By(credit).ToString()));
        }

        var moves = Enumerable.Range(1, MostMoves).Select(n => Numbered(Moves, n)).Where(context.Has).Select(m => (Cause: context.One(m), Move: new ProfileCondition(
            fact, answers.FirstOrDefault(a => a.Question == context.One(m + "-value")).Id ?? context.One(m + "-value"), context.Number(m + "-times"))));
        foreach (var cause in moves.GroupBy(m => m.Cause, m => m.Move, StringComparer.Ordinal))
        {
            var rule = cause.Aggregate(context.Knowledge.Faults[cause.Key], (r, move) =>
                r with { MovedBy = [.. r.MovedBy.Where(m => m.Fact != move.Fact || m.Value != move.Value), move] });
            changes.Add(new PutRule(new RuleKey(RuleKind.Fault, cause.Key), RuleItems.Of(rule, credit).ToString()));
        }

        var called = context.IsNew(Fact) ? context.One(Called) : context.Knowledge.Facts[fact].Called;
        return new Draft($"A fact of the bike: {CleanText.OneLine(called, 80)}", changes.ToImmutable());
    }

    /// <summary>Answers of a new fact go by their question until they have an id.</summary>
    private static ImmutableArray<Choice> Values(SheetContext context) => context.Knowledge.Facts.TryGetValue(context.One(Fact), out var known)
        ? Existing.Values(context.Knowledge, known.Id)
        : [.. Given(context).Select(a => new Choice(a, Say.Capital(CleanText.OneLine(context.One(a), 95))))];

    private static IEnumerable<string> Given(SheetContext context) => Enumerable.Range(1, MostAnswers).Select(n => Numbered(Answer, n)).Where(context.Has);

    private static ImmutableArray<(string Question, string Id)> Ids(SheetContext context) => Given(context).Aggregate(
        ImmutableArray<(string Question, string Id)>.Empty, (all, a) => all.Add((a, NewId.From(context.One(a), id => all.Any(x => x.Id == id)))));

    private static string Numbered(string name, int number) => FormattableString.Invariant($"{name}-{number}");

    private static Question New(string id, string ask, string help, QuestionKind kind, string page) => new(id, ask, help, kind, page) { Applies = c => c.IsNew(Fact) };
}
