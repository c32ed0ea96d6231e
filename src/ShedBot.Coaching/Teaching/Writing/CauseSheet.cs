using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A new cause, from the complaint to what keeps it from coming back.</summary>
internal static class CauseSheet
{
    public const string Name = "cause";

    private const string Complaint = "complaint", Called = "complaint-called", Short = "complaint-short", Phrases = "complaint-phrases";
    private const string Trouble = "the trouble", Cause = "the cause";
    private const string Is = "cause-is", Because = "cause-because", Strength = "complaint-strength", Common = "common";

    private static readonly SignQuestions Sign = new("sign", mayBeNew: true, c => c.One(Is));
    private static readonly SignQuestions Sign2 = new("sign-2", mayBeNew: false, c => c.One(Is));
    private static readonly SignQuestions Sign3 = new("sign-3", mayBeNew: false, c => c.One(Is), after: "sign-2");
    private static readonly CheckQuestions Check = new("check", c => c.IsNew("sign"), c => $"It shows whether {Fragment.Of(c.One(Is))}.");
    private static readonly RepairQuestions Repair = new("repair", c => Fragment.Of(c.One(Is)), mayHandOver: true);

    public static Sheet Sheet { get; } = new(
        Name, "A new cause", "From what the rider complains of to what keeps it from coming back. Each answer is kept at once; stop when you like and go on later.",
        [
            new(Complaint, "What does the rider complain of?", "What is felt, not what is broken.", QuestionKind.PickOne, Complaint)
            {
                Part = Trouble, Choices = c => [new Choice(Choice.New, "A trouble that is not in the list"), .. Existing.Complaints(c.Knowledge)],
            },
            NewComplaint(Called, "What is the trouble called? Finish it: the trouble is that ...", "Such as: the clutch rattles at idle", QuestionKind.Text),
            NewComplaint(Short, "What tells it from its neighbours? One sentence.", "Such as: With the lever out and the engine idling, something inside the cover rattles.", QuestionKind.Text) with { Longest = 500 },
            NewComplaint(Phrases, "How do riders say it? One way a line; three or more are good.", "In their own words: it rattles when I stand still", QuestionKind.Lines),
            new(Is, "What is wrong? Finish it: most likely ...", "Say it as something that is so: the small ball is missing", QuestionKind.Text, "cause") { Longest = 200, Part = Cause },
            new(Because, "Why does that give the trouble?", "A sentence or two for the rider: The bar is too short then, so the pull never reaches the plate.", QuestionKind.Text, "cause") { Longest = 1000, Part = Cause },
            new(Strength, "How often does the rider then complain of it?", "Every other cause left aside.", QuestionKind.Scale, "cause")
            {
                Part = Cause, Choices = _ => Scales.Chance, Asks = c => $"If only this is wrong: how often would the rider say that {ComplaintSays(c)}?",
            },
            new(Common, "How common is it?", "Beside all other causes. The rarer you say, the later the coach asks for it.", QuestionKind.Scale, "cause") { Part = Cause, Choices = _ => Scales.Frequency },
            .. Sign.Questions().In("what gives it away"), .. Check.Questions().In("how to look"), .. Sign2.Questions().In(More), .. Sign3.Questions().In(More),
            .. Repair.Questions().In("what mends it"), .. CreditQuestions.All.In("whose word it is"),
        ])
    { Write = Write };

    private const string More = "what else gives it away";

    private static string ComplaintSays(SheetContext context) =>
        context.Knowledge.Complaints.TryGetValue(context.One(Complaint), out var known) ? known.Called : Fragment.Of(context.One(Called));

    private static Draft Write(SheetContext context, Credit credit)
    {
        var ids = new NewIds(context.Knowledge);
        var changes = ImmutableArray.CreateBuilder<RuleChange>();
        var complaint = context.One(Complaint);
        if (context.IsNew(Complaint))
        {
            var called = Fragment.Of(context.One(Called));
            complaint = ids.For(called);
            changes.Add(new PutRule(new RuleKey(RuleKind.Complaint, complaint), new RuleItem()
                .Add("id", complaint).Add("called", called).Add("in short", context.One(Short)).Add("riders say", context.All(Phrases)).By(credit).ToString()));
        }

        var @is = Fragment.Of(context.One(Is));
        var fault = ids.For(@is);
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
            .Add("id", fault).Add("is", @is).Add("because", context.One(Because)).Add("how common", context.One(Common))
            .Add("shows as", shows.Aggregate(new RuleItem(), (item, pair) => item.Add(pair.Key, pair.Value))).By(credit).ToString()));
        if (Repair.Write(context, ids.For, fault, credit) is { } repair) changes.Add(repair);
        return new Draft($"A new cause: {CleanText.OneLine(@is, 80)}", changes.ToImmutable());
    }

    private static Question NewComplaint(string id, string ask, string help, QuestionKind kind) => new(id, ask, help, kind, Complaint + "-new") { Part = Trouble, Applies = c => c.IsNew(Complaint) };
}
