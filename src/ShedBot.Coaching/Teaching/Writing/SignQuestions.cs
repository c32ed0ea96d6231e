using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What gives a cause away: something that can be looked at, how it then is, and how often.</summary>
/// <param name="mayBeNew">True for the first sign, which must be told and may be one that nobody looks at yet.</param>
/// <param name="after">The sign before it, without which it is not asked for; null for none.</param>
/// <param name="near">Words of the cause, by which the likeliest signs are found.</param>
internal sealed class SignQuestions(string prefix, bool mayBeNew, Func<SheetContext, string> near, string? after = null)
{
    /// <summary>The states of a finding that is made here.</summary>
    public const string NormalState = "as-it-should-be", NewState = "seen";

    private string State => prefix + "-state";

    private string Strength => prefix + "-strength";

    public IEnumerable<Question> Questions()
    {
        var page = prefix + "-is";
        yield return new Question(
            prefix,
            mayBeNew ? "What gives it away? Something to see, feel or tell." : "Does anything else give it away? Skip when that was all.",
            mayBeNew ? "Best is something that hardly any other cause shows. Pick what is looked at, or say that it is new." : "A second sign tells it from its neighbours.",
            QuestionKind.PickOne, prefix)
        {
            Required = mayBeNew,
            Applies = c => after is null || c.Has(after),
            Near = near,
            Choices = c => [.. mayBeNew ? new[] { new Choice(Choice.New, "Something that nobody looks at yet") } : [], .. Existing.Findings(c.Knowledge)],
        };
        yield return new Question(State, "How is it then?", "What you find when this is the cause.", QuestionKind.PickOne, page)
        {
            Applies = c => c.Picked(prefix),
            Choices = c => Existing.Signs(c.Knowledge, c.One(prefix)),
            Asks = c => $"{Means(c)}: how is it when this is the cause?",
        };
        if (mayBeNew)
        {
            yield return New("means", "What do you look at? A few words.", "Such as: the small ball behind the bar", QuestionKind.Text, page);
            yield return New("normal", "How is it when all is well?", "The answer, as a rider would give it: It is there, round and bright", QuestionKind.Text, page);
            yield return New("seen", "How is it when this is the cause?", "The answer, as a rider would give it: There is no ball", QuestionKind.Text, page);
            yield return New("stop", "Is it unsafe to ride so? Skip when it is not.", "Only for what can hurt somebody, with what to do: The wheel can lock. Push it home.", QuestionKind.Text, page) with { Required = false, Longest = 500 };
        }

        yield return new Question(Strength, "With this cause: how often is it found so?", "Every other cause left aside.", QuestionKind.Scale, page)
        {
            Applies = c => IsAsked(c) && c.Has(prefix),
            Choices = _ => Scales.Chance,
        };
    }

    /// <returns>The new finding, or null when one was picked.</returns>
    public PutRule? Write(SheetContext context, NewIds ids, Credit credit)
    {
        if (!context.IsNew(prefix)) return null;
        var means = Fragment.Of(context.One(prefix + "-means"));
        var id = ids.For(means);
        return new PutRule(new RuleKey(RuleKind.Finding, id), new RuleItem()
            .Add("id", id).Add("means", means)
            .Add("states",
            [
                new RuleItem().Add("id", NormalState).Add("says", context.One(prefix + "-normal")),
                new RuleItem().Add("id", NewState).Add("says", context.One(prefix + "-seen")).Add("stop riding", context.One(prefix + "-stop")),
            ]).By(credit).ToString());
    }

    public (string Finding, string State, string Strength)? Picked(SheetContext context) =>
        IsAsked(context) && context.Picked(prefix) ? (context.One(prefix), context.One(State), context.One(Strength)) : null;

    private bool IsAsked(SheetContext context) => after is null || context.Has(after);

    private string Means(SheetContext context) => context.Knowledge.Findings.TryGetValue(context.One(prefix), out var rule) ? Speaking.Say.Capital(rule.Means) : "That";

    private Question New(string id, string ask, string help, QuestionKind kind, string page) => new($"{prefix}-{id}", ask, help, kind, page) { Applies = c => c.IsNew(prefix) };
}
