using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What keeps a sound bike sound: the work, and when it is due.</summary>
internal static class ServiceSheet
{
    private const string Called = "task-called", Does = "task-does", Why = "task-why", Steps = "task-steps", Tools = "task-tools", Minutes = "task-minutes", Hazard = "task-hazard";
    private const string When = "task-when", Every = "task-every", Latest = "task-latest", Event = "task-event", After = "task-after";
    private const string Wet = "task-wet", Dusty = "task-dusty", Only = "task-only", OnlyIs = "task-only-is", DoneBy = "task-done-by", Reveals = "task-reveals";
    private const string In = "-in", Again = "+every", Once = "+after", Both = "+both", EachRide = "+each";

    private static readonly CautionQuestions Cautions = new("task", _ => true);

    private static readonly ImmutableArray<Choice> Measures = [new("riding days", "days on which it is ridden"), new("hours", "hours of running"), new("km", "kilometres"), new("days", "days of the calendar")];

    public static Sheet Sheet { get; } = new(
        "service", "A service task", "Work that is due again and again, or once after something else was done. It comes into every member's plan.",
        [
            new(Called, "What is it called? Finish it: due: ...", "Short, such as: grease for the lever pivot", QuestionKind.Text, "task") { Longest = 120 },
            new(Does, "What is done? Finish it: time to ...", "Such as: put a drop of oil on the lever pivot", QuestionKind.Text, "task"),
            new(Why, "What does it prevent? A sentence or two for the rider.", "Such as: A dry pivot wears oval, and then the lever wobbles.", QuestionKind.Text, "task") { Longest = 600 },
            new(Steps, "Its steps, one a line, in the right order.", "One thing in each. Behind ' -- ' you may add what it should look like.", QuestionKind.Lines, "task") { Longest = 600 },
            new(Tools, "Which tools? One a line, or skip.", "Such as: thin oil", QuestionKind.Lines, "task") { Required = false, Longest = 80 },
            new(Minutes, "How many minutes does it take a beginner?", "Just a number: 5.", QuestionKind.Number, Minutes) { Unit = "minutes" },
            new(Hazard, "How dangerous is it?", "For whoever does it.", QuestionKind.Scale, Hazard) { Choices = _ => Scales.Hazard },
            .. Cautions.Questions(),
            new(When, "When is it due?", "Counted from when it was last done, or from something else that was done.", QuestionKind.PickOne, When)
            {
                Choices = _ => [new(Again, "Again and again"), new(Once, "Once after something was done or fitted"), new(Both, "Once after that, and then again and again"), new(EachRide, "Before every ride: nobody is reminded of it")],
            },
            .. Interval(Every, "Again after how many?", "14 is a fortnight of riding days.", 1, c => c.One(When) is Again or Both),
            new(Latest, "And after how many days of the calendar at the latest, ridden or not? Or skip.", "A year is 365.", QuestionKind.Number, Latest)
            {
                Required = false, Least = 1, Most = 3650, Unit = "days", Applies = c => c.One(When) is Again or Both && c.Has(Every + In) && c.One(Every + In) != "days",
            },
            new(Event, "After what?", "The kit fitted, a repair, or another task.", QuestionKind.PickOne, Event)
            {
                Applies = c => c.One(When) is Once or Both,
                Choices = c => [new(ServiceAfter.Fitted, "The day on which the kit was fitted"), .. Existing.Repairs(c.Knowledge), .. Existing.Tasks(c.Knowledge)],
            },
            .. Interval(After, "How long after that?", "0 is before the next ride.", 0, c => c.One(When) is Once or Both),
            Weather(Wet, "Does riding in the wet count for more? How many times, or skip.", "2: a wet day counts as two."),
            Weather(Dusty, "Does riding in dust count for more? How many times, or skip.", "2: a dusty day counts as two."),
            new(Only, "Is it only for some bikes? Pick the fact that tells, or skip.", "It is for bikes of which the fact is so, or not known.", QuestionKind.PickOne, Only) { Required = false, Choices = c => Existing.Facts(c.Knowledge) },
            new(OnlyIs, "With which of these answers?", "One or more.", QuestionKind.PickSeveral, OnlyIs)
            {
                Applies = c => c.Has(Only),
                Choices = c => Existing.Values(c.Knowledge, c.One(Only)),
            },
            new(DoneBy, "Which repairs do this work too? Skip when none.", "Whoever makes such a repair has this done.", QuestionKind.PickSeveral, DoneBy) { Required = false, Choices = c => Existing.Repairs(c.Knowledge) },
            new(Reveals, "Which troubles may it bring to light? Skip when none.", "The rider is asked for them when it is done.", QuestionKind.PickSeveral, Reveals) { Required = false, Choices = c => Existing.Complaints(c.Knowledge) },
            .. CreditQuestions.All,
        ])
    { Write = Write };

    private static IEnumerable<Question> Interval(string id, string ask, string help, double least, Func<SheetContext, bool> applies)
    {
        yield return new Question(id + In, $"{ask[..^1]}: counted in what?", "Whatever wears it most.", QuestionKind.Scale, id) { Applies = applies, Choices = _ => Measures };
        yield return new Question(id, ask, help, QuestionKind.Number, id)
        {
            Least = least,
            Most = 20_000,
            Applies = applies,
            Asks = c => $"{ask} A number{(c.Has(id + In) ? $" of {c.One(id + In)}" : "")}.",
        };
    }

    private static Question Weather(string id, string ask, string help) => new(id, ask, help, QuestionKind.Number, "task-weather")
    {
        Required = false,
        Least = 1,
        Most = 5,
        Applies = c => (c.Has(Every + In) && c.One(Every + In) != "days") || (c.Has(After + In) && c.One(After + In) != "days" && c.Number(After) > 0),
    };

    private static Draft Write(SheetContext context, Credit credit)
    {
        var id = new NewIds(context.Knowledge).For(context.One(Called));
        var item = new RuleItem()
            .Add("id", id).Add("called", context.One(Called)).Add("does", context.One(Does)).Add("why", context.One(Why)).Add("minutes", context.One(Minutes)).Add("hazard", context.One(Hazard))
            .Add("tools", context.All(Tools)).Add("cautions", Cautions.Write(context)).Add("steps", context.All(Steps).Select(RepairQuestions.Step));
        if (context.Has(Every)) item.Add("every", [Text(context, Every), .. context.Has(Latest) ? [$"{context.One(Latest)} days"] : Array.Empty<string>()]);
        if (context.Has(After)) item.Add("after", [new RuleItem().Add("events", [context.One(Event)]).Add("at", [Text(context, After)])]);
        if (context.Has(Wet)) item.Add("wet counts", context.One(Wet));
        if (context.Has(Dusty)) item.Add("dusty counts", context.One(Dusty));
        if (context.Has(Only)) item.Add("only if", [new RuleItem().Add("fact", context.One(Only)).Add("is", context.All(OnlyIs))]);
        item.Add("done by", context.All(DoneBy)).Add("reveals", context.All(Reveals)).Add("before each ride", context.One(When) == EachRide ? "yes" : null).By(credit);
        return new Draft($"A service task: {CleanText.OneLine(context.One(Called), 80)}", [new PutRule(new RuleKey(RuleKind.Service, id), item.ToString())]);
    }

    private static string Text(SheetContext context, string interval) => context.Number(interval) == 0
        ? IntervalWords.BeforeTheNextRide
        : string.Create(CultureInfo.InvariantCulture, $"{context.One(interval)} {context.One(interval + In)}");
}
