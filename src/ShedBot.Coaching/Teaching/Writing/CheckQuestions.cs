using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>How a rider learns whether something is so: the question, what to do, and what it takes.</summary>
/// <param name="why">What the rider is told of why it is asked, where nothing else was said.</param>
internal sealed class CheckQuestions(string prefix, Func<SheetContext, bool> applies, Func<SheetContext, string> why)
{
    private readonly CautionQuestions cautions = new(prefix, applies);

    public IEnumerable<Question> Questions()
    {
        var (words, work) = (prefix + "-words", prefix + "-work");
        return
        [
            Q("ask", "What should the rider be asked?", "One short question, as across the yard: Are the three screws of the arm-side cover tight?", QuestionKind.Text, words),
            Q("why", "Why is it asked? Or skip.", "A sentence for the rider: If the cover moves, the pull is lost.", QuestionKind.Text, words) with { Required = false, Longest = 600 },
            Q("how", "How do you look? Skip if a glance is enough.", "One step a line, so that a newcomer finds the part.", QuestionKind.Lines, words) with { Required = false },
            Q("tools", "Which tools? One a line, or skip.", "Such as: cross-head screwdriver", QuestionKind.Lines, words) with { Required = false, Longest = 80 },
            Q("minutes", "How many minutes does it take a beginner?", "Just a number: 2.", QuestionKind.Number, words) with { Unit = "minutes" },
            Q("cover", "Is there a cover to open first?", "Then its own minutes and steps come before it.", QuestionKind.PickOne, work) with
            {
                // None comes off by hand.
                Applies = c => applies(c) && c.Has(prefix + "-tools"), Choices = c => [new Choice(Choice.None, "No cover"), .. Existing.Covers(c.Knowledge)],
            },
            Q("hazard", "How dangerous is it?", "For whoever does it.", QuestionKind.Scale, work) with { Choices = _ => Scales.Hazard },
            Q("reliability", "How far can a beginner's answer be trusted?", "Be honest: the coach asks twice before it believes a hard one.", QuestionKind.Scale, work) with { Choices = _ => Scales.Reliability },
            .. cautions.Questions(),
        ];
    }

    public PutRule Write(SheetContext context, string id, string finding, Credit credit)
    {
        var cover = context.Picked(prefix + "-cover") ? context.One(prefix + "-cover") : null;
        var (how, tools, hazard) = (context.All(prefix + "-how"), context.All(prefix + "-tools"), context.One(prefix + "-hazard"));
        // Wherever hands may go near the bike the question before hands-on work comes first.
        var handsOn = !how.IsEmpty || !tools.IsEmpty || cover is not null || hazard is not "none";
        return new PutRule(new RuleKey(RuleKind.Check, id), new RuleItem()
            .Add("id", id).Add("tells", finding).Add("ask", context.One(prefix + "-ask"))
            .Add("why", context.One(prefix + "-why") is { Length: > 0 } told ? told : why(context)).Add("how", how)
            .Add("minutes", context.One(prefix + "-minutes")).Add("tools", tools).Add("cover", cover).Add("hazard", hazard).Add("hands on", handsOn ? "yes" : "no")
            .Add("reliability", context.One(prefix + "-reliability")).Add("cautions", cautions.Write(context)).By(credit).ToString());
    }

    private Question Q(string id, string ask, string help, QuestionKind kind, string page) => new($"{prefix}-{id}", ask, help, kind, page) { Applies = applies };
}
