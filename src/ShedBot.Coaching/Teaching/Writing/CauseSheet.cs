using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A new cause, from the complaint to what keeps it from coming back.</summary>
internal static class CauseSheet
{
    public const string Name = "cause";

    private const string Complaint = "complaint", Called = "complaint-called", Short = "complaint-short", Phrases = "complaint-phrases";
    private const string Is = "cause-is", Because = "cause-because", Strength = "complaint-strength", Common = "common";

    private static readonly SignQuestions Sign = new("sign", mayBeNew: true);
    private static readonly SignQuestions Sign2 = new("sign-2", mayBeNew: false);
    private static readonly SignQuestions Sign3 = new("sign-3", mayBeNew: false, after: "sign-2");
    private static readonly CheckQuestions Check = new("check", c => c.IsNew("sign"));
    private static readonly RepairQuestions Repair = new("repair", c => c.One(Is), mayHandOver: true);

    public static Sheet Sheet { get; } = new(
        Name, "A new cause", "From what the rider complains of to what keeps it from coming back. Each answer is kept at once; stop when you like and go on later.",
        [
            new(Complaint, "What does the rider complain of?", "What is felt, not what is broken.", QuestionKind.PickOne, Complaint)
            {
                Choices = c => [new Choice(Choice.New, "A trouble that is not in the list"), .. Existing.Complaints(c.Knowledge)],
            },
            NewComplaint(Called, "What is the trouble called? Finish it: the trouble is that ...", "Such as: the clutch rattles at idle", QuestionKind.Text),
            NewComplaint(Short, "What tells it from its neighbours? One sentence.", "Such as: With the lever out and the engine idling, something inside the cover rattles.", QuestionKind.Text) with { Longest = 500 },
            NewComplaint(Phrases, "How do riders say it? One way a line; three or more are good.", "In their own words: it rattles when I stand still", QuestionKind.Lines),
            new(Is, "What is wrong? Finish it: most likely ...", "Say it as something that is so: the small ball is missing", QuestionKind.Text, "cause") { Longest = 200 },
            new(Because, "Why does that give the trouble? Two sentences for the rider.", "Such as: Without the ball the bar is too short, so the pull never reaches the plate.", QuestionKind.Text, "cause") { Longest = 1000 },
            new(Strength, "How often does the rider then complain of it?", "If only this is wrong.", QuestionKind.Scale, "strength")
            {
                Choices = _ => Scales.Chance, Asks = c => $"If only this is wrong: how often would the rider say that {ComplaintSays(c)}?",
            },
            new(Common, "How common is it?", "Beside other causes; the coach learns the rest from your club's own cases.", QuestionKind.Scale, "strength") { Choices = _ => Scales.Frequency },
            .. Sign.Questions(), .. Check.Questions(), .. Sign2.Questions(), .. Sign3.Questions(), .. Repair.Questions(), .. CreditQuestions.All,
        ])
    { Write = Write };

    private static string ComplaintSays(SheetContext context) =>
        context.Knowledge.Complaints.TryGetValue(context.One(Complaint), out var known) ? known.Called : context.One(Called);

    private static Draft Write(SheetContext context, Credit credit)
    {
        var ids = new NewIds(context.Knowledge);
        var changes = ImmutableArray.CreateBuilder<RuleChange>();
        var complaint = context.One(Complaint);
        if (context.IsNew(Complaint))
        {
            complaint = ids.For(context.One(Called));
            changes.Add(new PutRule(new RuleKey(RuleKind.Complaint, complaint), new RuleItem()
                .Add("id", complaint).Add("called", context.One(Called)).Add("in short", context.One(Short)).Add("riders say", context.All(Phrases)).By(credit).ToString()));
        }

        var fault = ids.For(context.One(Is));
        var shows = new SortedDictionary<string, RuleItem>(StringComparer.Ordinal) { [complaint] = new RuleItem().Add("yes", context.One(Strength)) };
        if (Sign.Write(context, ids, credit) is { } finding)
        {
            changes.Add(finding);
            shows[finding.Key.Id] = new RuleItem().Add(SignQuestions.NewState, context.One("sign-strength"));
            changes.Add(Check.Write(context, ids.For(context.One("check-ask")), finding.Key.Id, credit));
        }

        foreach (var sign in new[] { Sign, Sign2, Sign3 })
        {
            if (sign.Picked(context) is { } picked && !shows.ContainsKey(picked.Finding)) shows[picked.Finding] = new RuleItem().Add(picked.State, picked.Strength);
        }

        changes.Add(new PutRule(new RuleKey(RuleKind.Fault, fault), new RuleItem()
            .Add("id", fault).Add("is", context.One(Is)).Add("because", context.One(Because)).Add("how common", context.One(Common))
            .Add("shows as", shows.Aggregate(new RuleItem(), (item, pair) => item.Add(pair.Key, pair.Value))).By(credit).ToString()));
        if (Repair.Write(context, ids.For, fault, credit) is { } repair) changes.Add(repair);
        return new Draft($"A new cause: {CleanText.OneLine(context.One(Is), 80)}", changes.ToImmutable());
    }

    private static Question NewComplaint(string id, string ask, string help, QuestionKind kind) => new(id, ask, help, kind, Complaint + "-new") { Applies = c => c.IsNew(Complaint) };
}
