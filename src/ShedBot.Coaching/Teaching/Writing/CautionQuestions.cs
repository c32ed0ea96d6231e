using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Cautions of a check or repair: one of the usual kind, or the club's own words in the order of ANSI Z535.6. Two at most.</summary>
/// <param name="prefix">What the questions' ids begin with.</param>
/// <param name="applies">Whether the work itself is asked for.</param>
internal sealed class CautionQuestions(string prefix, Func<SheetContext, bool> applies)
{
    private static readonly ImmutableArray<Choice> Examples =
    [
        .. CautionExamples.All.Select(e => new Choice(e.Id, $"{e.Called}: {e.Caution.Word}", $"{e.Caution.Hazard}; {e.Caution.Consequence}; {e.Caution.Avoid}")),
        new Choice(Choice.New, "in my own words"),
    ];

    private string First => prefix + "-caution";

    private string Second => prefix + "-caution-2";

    /// <summary>Whether somebody can be hurt by it: then a caution must be given.</summary>
    private bool IsRisky(SheetContext context) => context.One(prefix + "-hazard") is "low" or "medium" or "high" || context.Picked(prefix + "-cover");

    public IEnumerable<Question> Questions()
    {
        foreach (var question in One(First, c => applies(c) && IsRisky(c), "What must whoever does it beware of?",
            "What you say here is shown before the work starts. Pick one of the usual kind, or use your own words.", required: true)) yield return question;
        foreach (var question in One(Second, c => applies(c) && c.Has(First), "Anything else to beware of? Skip when that was all.",
            "Chemicals, heat, springs, petrol, brakes.", required: false)) yield return question;
    }

    public IEnumerable<RuleItem> Write(SheetContext context) => new[] { First, Second }.Select(id => Of(id, context)).OfType<CautionRule>().Select(c =>
        new RuleItem().Add("word", c.Word).Add("hazard", c.Hazard).Add("consequence", c.Consequence).Add("avoid", c.Avoid));

    private static CautionRule? Of(string id, SheetContext context) => context.IsNew(id)
        ? new CautionRule(context.One(id + "-word"), context.One(id + "-what"), context.One(id + "-does"), context.One(id + "-avoid"))
        : CautionExamples.Find(context.One(id));

    private static IEnumerable<Question> One(string id, Func<SheetContext, bool> when, string ask, string help, bool required)
    {
        bool Own(SheetContext c) => when(c) && c.IsNew(id);
        yield return new Question(id, ask, help, QuestionKind.PickOne, id) { Required = required, Applies = when, Choices = _ => Examples };
        yield return new Question(id + "-word", "How bad can it be?", "The signal word that stands over it.", QuestionKind.Scale, id + "-own") { Applies = Own, Choices = _ => Scales.Signal };
        yield return new Question(id + "-what", "What is dangerous?", "A few words: Hot exhaust.", QuestionKind.Text, id + "-own") { Applies = Own };
        yield return new Question(id + "-does", "What does it do?", "A few words: burns the skin.", QuestionKind.Text, id + "-own") { Applies = Own };
        yield return new Question(id + "-avoid", "How is it avoided?", "A few words: let it cool for 20 minutes.", QuestionKind.Text, id + "-own") { Applies = Own };
    }
}
