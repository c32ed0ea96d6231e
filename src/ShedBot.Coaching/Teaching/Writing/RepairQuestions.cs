using System.Collections.Immutable;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What mends a cause: a repair that is there, or a new one from its steps to what keeps the trouble from coming back.</summary>
/// <param name="mayHandOver">True where a cause may be left without a repair, for a helper.</param>
internal sealed class RepairQuestions(string prefix, Func<SheetContext, string> cause, bool mayHandOver)
{
    private readonly CautionQuestions cautions = new(prefix, c => c.IsNew(prefix));

    public IEnumerable<Question> Questions()
    {
        var (words, work, after) = (prefix + "-words", prefix + "-work", prefix + "-after");
        return
        [
            new(prefix, "What mends it?", "Pick a repair that is there, or say that it is a new one.", QuestionKind.PickOne, prefix)
            {
                Asks = c => $"What mends it when {cause(c)}?",
                Near = cause,
                Choices = c =>
                [
                    new Choice(Choice.New, "A new repair"), .. mayHandOver ? new[] { new Choice(Choice.None, "Nothing a rider can do: a helper takes over") } : [], .. Existing.Repairs(c.Knowledge),
                ],
            },
            New("does", "The repair. Finish it: time to ...", "Such as: tighten the three screws of the arm-side cover", QuestionKind.Text, words),
            New("steps", "Its steps, one a line, in the right order.", "Behind ' -- ' you may add what it should look like.", QuestionKind.Lines, words) with { Longest = 600 },
            New("tools", "Which tools? One a line, or skip.", "Such as: cross-head screwdriver that fits", QuestionKind.Lines, words) with { Required = false, Longest = 80 },
            New("parts", "Any new parts? One a line, or skip.", "With how to get the right one, such as: thrust ball: measure the old one across", QuestionKind.Lines, words) with { Required = false },
            New("minutes", "How many minutes does it take a beginner?", "Just a number: 20.", QuestionKind.Number, words) with { Unit = "minutes" },
            New("money", "What do the parts cost, in your own money?", "Just a number, for all of them.", QuestionKind.Number, work) with { Most = 10_000, Applies = c => c.IsNew(prefix) && c.Has(prefix + "-parts") },
            New("cover", "Is there a cover to open first?", "Then its own minutes and steps come before it.", QuestionKind.PickOne, work) with
            {
                // None comes off by hand.
                Applies = c => c.IsNew(prefix) && c.Has(prefix + "-tools"), Choices = c => [new Choice(Choice.None, "No cover"), .. Existing.Covers(c.Knowledge)],
            },
            New("hazard", "How dangerous is it?", "For whoever does it.", QuestionKind.Scale, work) with { Choices = _ => Scales.Hazard },
            .. cautions.Questions(),
            New("helper", "Should a beginner leave this to a practised hand or a licensed shop?", "Say yes for brakes, fuel, welding, cutting and whatever the law where you ride leaves to a licence.", QuestionKind.Scale, prefix + "-helper") with
            {
                Applies = c => c.IsNew(prefix) && c.One(prefix + "-hazard") is "medium" or "high", Choices = _ => Scales.YesNo,
            },
            New("helper-why", "Why? A sentence for the rider.", "Such as: A brake that was put together wrong is only noticed when it is needed.", QuestionKind.Text, prefix + "-helper-why") with
            {
                Applies = c => c.IsNew(prefix) && c.One(prefix + "-helper") == "yes",
            },
            New("prove", "How does the rider prove that it held?", "One a line: Lever firm, cover still, same bite each pull.", QuestionKind.Lines, after),
            New("prevent", "What keeps it away? One a line, or skip.", "Such as: Try the screws after the first two rides.", QuestionKind.Lines, after) with { Required = false },
            new(prefix + "-strength", "How surely does that mend it?", "In the rider's own hands, every other cause left aside.", QuestionKind.Scale, after)
            {
                Applies = c => c.Has(prefix) && c.One(prefix) != Choice.None, Choices = _ => Scales.Chance,
            },
        ];
    }

    /// <param name="id">Of a new repair.</param>
    /// <returns>Null when a helper takes over.</returns>
    public RuleChange? Write(SheetContext context, Func<string, string> id, string fault, Credit credit)
    {
        var strength = context.One(prefix + "-strength");
        if (context.Picked(prefix))
        {
            var repair = context.One(prefix);
            return new MendValue(
                new RuleKey(RuleKind.Repair, repair), RulePath.Of("mends", fault),
                context.Knowledge.Repairs.TryGetValue(repair, out var rule) ? rule.Mends.GetValueOrDefault(fault) : null, strength, credit);
        }

        return context.IsNew(prefix) ? New(context, id(Fragment.ToDo(context.One(prefix + "-does"))), fault, strength, credit) : null;
    }

    private PutRule New(SheetContext context, string id, string fault, string strength, Credit credit) => new(new RuleKey(RuleKind.Repair, id), new RuleItem()
        .Add("id", id).Add("does", Fragment.ToDo(context.One(prefix + "-does"))).Add("mends", new RuleItem().Add(fault, strength))
        .Add("minutes", context.One(prefix + "-minutes")).Add("money", context.Has(prefix + "-money") ? context.One(prefix + "-money") : "0")
        .Add("cover", context.Picked(prefix + "-cover") ? context.One(prefix + "-cover") : null).Add("hazard", context.One(prefix + "-hazard"))
        .Add("tools", context.All(prefix + "-tools")).Add("parts", context.All(prefix + "-parts").Select(Part)).Add("cautions", cautions.Write(context))
        .Add("steps", context.All(prefix + "-steps").Select(Step)).Add("prove", context.All(prefix + "-prove"))
        .Add("prevent", context.All(prefix + "-prevent")).Add("for helper", context.One(prefix + "-helper-why")).By(credit).ToString());

    /// <summary>What a step should look like stands behind two dashes.</summary>
    public static RuleItem Step(string line) =>
        line.Split(" -- ", 2) is [var work, var note] ? new RuleItem().Add("do", work).Add("note", note) : new RuleItem().Add("do", line);

    private static RuleItem Part(string line) => line.Split(": ", 2) is [var name, var size]
        ? new RuleItem().Add("name", name).Add("size", Say.Capital(size))
        : new RuleItem().Add("name", line).Add("size", "Match the one that comes out.");

    private Question New(string id, string ask, string help, QuestionKind kind, string page) => new($"{prefix}-{id}", ask, help, kind, page) { Applies = c => c.IsNew(prefix) };
}
