using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Nudging;

/// <summary>What reminders look like, for any platform.</summary>
internal static class NudgeCards
{
    /// <summary>So many tasks that are due are named, and as many that are coming up; the rest that is due is counted.</summary>
    public const int MostNamed = 5;

    /// <summary>For so many bikes a ride can be logged from the message.</summary>
    private const int MostToRide = 2;

    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");

    /// <param name="say">What is due, and what is coming up with it.</param>
    /// <param name="open">How many more are due, of which the member was told before.</param>
    /// <param name="evening">True for the reminder that was asked for with "tonight": there is no second one that day.</param>
    /// <param name="day">The member's own day of the message, where it is shown anew later; null: today.</param>
    public static Card Digest(ImmutableArray<DueItem> say, int open, RiderClock clock, bool evening, LocalDate? day = null)
    {
        var digest = day ?? clock.Today;
        var bikes = say.Select(d => d.Bike.Id).Distinct().Count();
        ImmutableArray<DueItem> due = [.. say.Where(d => d.IsDue(clock.Today))], coming = [.. say.Where(d => !d.IsDue(clock.Today))];
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        blocks.AddRange(Say.List("Time to", due.Take(MostNamed).Select(d => Line(d, bikes > 1))));
        if (due.Length > MostNamed) blocks.Add(Say.Text($"And {due.Length - MostNamed} more; your plan has them all."));
        blocks.AddRange(Say.List(due.IsEmpty ? "Coming up" : "Coming up, and done in one go with it", coming.Select(d => ComingLine(d, bikes > 1))));
        if (open > 0) blocks.Add(Say.Text($"Still open from before: {open}."));
        var title = Title(due.IsEmpty ? coming : due, due.IsEmpty, bikes);
        if (say is [var only])
        {
            blocks.Add(Say.Text($"{only.Item.Rule.Why} {only.Item.Because}"));
            blocks.AddRange(Say.Cautions(only.Item.Rule.Cautions));
            return new Card(title, blocks.ToImmutable(), [.. OfTask(only.Bike, only.Item.Rule, digest), .. OfDigest(clock, evening, digest, say)]);
        }

        return new Card(
            title,
            blocks.ToImmutable(),
            [
                .. due.Take(MostNamed).Concat(coming).Select(d => Answer(
                    NudgeVerb.Look, digest, Say.Capital(d.Item.Rule.Called) + (bikes > 1 ? $", {Name(d.Bike)}" : ""), d.Bike, d.Item.Rule.Id)),
                Answer(NudgeVerb.AllDone, digest, "All of it is done"),
                .. due.IsEmpty || coming.IsEmpty ? [] : (CardOption[])[Answer(NudgeVerb.DueDone, digest, "What is due is done, the rest later")],
                .. OfDigest(clock, evening, digest, say),
            ]);
    }

    /// <summary>One task of a digest, by itself.</summary>
    public static Card Task(DueItem due, LocalDate digest, LocalDate today) => new(
        Say.Capital(due.Item.Rule.Called),
        [Say.Text(due.IsSoon(today) ? $"Soon time to {ComingLine(due, false)}. {due.Item.Rule.Why}" : $"Time to {due.Item.Rule.Does}: {due.Item.Amount.Words}. {due.Item.Rule.Why}"), .. Say.Cautions(due.Item.Rule.Cautions)],
        OfTask(due.Bike, due.Item.Rule, digest));

    public static Card HowTo(BikeProfile bike, ServiceRule rule, LocalDate digest) => new(
        Say.Capital(rule.Does),
        [Say.Text(rule.Why), .. TaskCards.Doing(rule)],
        [Answer(NudgeVerb.Done, digest, "Done", bike, rule.Id), .. Trouble(bike, rule, digest)]);

    /// <summary>Which trouble it is, of those that doing it may show.</summary>
    public static Card WhichTrouble(BikeProfile bike, ServiceRule rule, KnowledgeBase knowledge, LocalDate digest) => new(
        "What does it show?",
        [Say.Text("Don't ride on with it. Pick what fits best and we look for the cause.")],
        [.. rule.Reveals.Where(knowledge.Complaints.ContainsKey).Select(c =>
            Answer(NudgeVerb.OpenCase, digest, Say.Capital(knowledge.Complaints[c].Called), bike, c))]);

    /// <summary>Asked once, where the member is talking anyway.</summary>
    public static Card MayI(LocalDate today) => new(
        "Shall I remind you?",
        [Say.Text("When something falls due on your bike I can write to you: one message for all of it, at most one a day of my own accord, never at night. "
            + "You can stop it at any time.")],
        [Answer(NudgeVerb.Agree, today, "Yes, remind me"), Answer(NudgeVerb.Decline, today, "No, thanks")]);

    public static Card GoOn(LocalDate today) => new(
        "Shall I go on reminding you?",
        [Say.Text("My last two messages went unanswered. Something is due again; unless you tell me to go on I stay silent until I hear of you.")],
        [Answer(NudgeVerb.GoOn, today, "Go on"), Answer(NudgeVerb.Decline, today, "Stop all reminders")]);

    /// <summary>The one mention in a place that others read: it says nothing of the bike.</summary>
    public static Card Mention { get; } = new(
        "I could not write to you",
        [Say.Text("I have a reminder for you, and direct messages from me don't reach you. Your plan has it. I won't try again unless you ask me to remind you.")],
        []);

    /// <summary>The same at the member's next command, which only they read.</summary>
    public static Card Note(LocalDate today) => new(
        "A reminder did not reach you",
        [Say.Text("Direct messages from me don't reach you, so I have stopped sending them. Your plan has what is due.")],
        [Answer(NudgeVerb.Agree, today, "Try again from now on")]);

    public static Card Said(string title, string? text = null) => new(title, text is null ? [] : [Say.Text(text)], []);

    public static string Name(BikeProfile bike) => bike.Name.Length > 0 ? CleanText.OneLine(bike.Name, 40) : "your bike";

    private static string Title(ImmutableArray<DueItem> items, bool coming, int bikes) => (items, coming) switch
    {
        ([var only], false) => $"Due on {Name(only.Bike)}: {only.Item.Rule.Called}",
        ([var only], true) => $"Coming up on {Name(only.Bike)}: {only.Item.Rule.Called}",
        (_, var soon) => $"{items.Length} things are {(soon ? "coming up" : "due")} on {(bikes > 1 ? "your bikes" : Name(items[0].Bike))}",
    };

    /// <summary>As in "oil the chain (131 km of about 150 km, expected around Fri 5 Jun)".</summary>
    private static string ComingLine(DueItem coming, bool named) =>
        $"{coming.Item.Rule.Does}{(named ? $" on {Name(coming.Bike)}" : "")} ({coming.Item.Amount.Words}, "
        + $"expected {(coming.Item.Earliest == coming.Item.Latest ? "on" : "around")} {Day.Format(coming.Item.Expected!.Value)})";

    private static string Line(DueItem due, bool named) =>
        $"{due.Item.Rule.Does}{(named ? $" on {Name(due.Bike)}" : "")} ({due.Item.Amount.Words}{(due.Item.State == DueState.Overdue ? ", overdue" : "")})";

    private static ImmutableArray<CardOption> OfTask(BikeProfile bike, ServiceRule rule, LocalDate digest) =>
    [
        Answer(NudgeVerb.Done, digest, "Done", bike, rule.Id),
        Answer(NudgeVerb.HowTo, digest, "How do I?", bike, rule.Id),
        .. Trouble(bike, rule, digest),
        Answer(NudgeVerb.StopTask, digest, "No more of this one", bike, rule.Id, OptionRole.Help),
    ];

    private static IEnumerable<CardOption> Trouble(BikeProfile bike, ServiceRule rule, LocalDate digest) =>
        rule.Reveals.IsEmpty ? [] : [Answer(NudgeVerb.Trouble, digest, "It shows trouble", bike, rule.Id)];

    private static IEnumerable<CardOption> OfDigest(RiderClock clock, bool evening, LocalDate digest, ImmutableArray<DueItem> say)
    {
        yield return Answer(NudgeVerb.Tonight, digest, evening || Postponing.Tonight(clock) is null ? "Tomorrow" : "Tonight");
        yield return Answer(NudgeVerb.Weekend, digest, "Saturday morning");
        yield return Answer(NudgeVerb.NextWeek, digest, "In a week");
        // What is due is reckoned from what was ridden, so the ride that nobody logged can be logged here.
        ImmutableArray<BikeProfile> bikes = [.. say.Select(d => d.Bike).DistinctBy(b => b.Id).Take(MostToRide)];
        foreach (var bike in bikes) yield return Answer(NudgeVerb.Rode, digest, bikes.Length > 1 ? $"I rode {Name(bike)} today" : "I rode today", bike);
        yield return Answer(NudgeVerb.NotRiding, digest, "Not riding", role: OptionRole.Help);
        yield return Answer(NudgeVerb.Decline, digest, "Stop all reminders", role: OptionRole.Help);
    }

    private static CardOption Answer(
        NudgeVerb verb, LocalDate digest, string label, BikeProfile? bike = null, string subject = "", OptionRole role = OptionRole.Answer) =>
        new(new NudgeAnswer(verb, digest, bike is null ? "" : NudgeAnswer.ShortOf(bike), subject).ToString(), label, role);
}
