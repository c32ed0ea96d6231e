using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Speaking;

/// <summary>What is said beside the questions: help, answers to the member's own questions, kind refusals.</summary>
internal static class HelpCards
{
    public static Card Welcome(string name) => Plain(
        $"Hello {name}",
        "I help with the clutch of small two-stroke engine kits on bicycles. Tell me in your own words what the bike does, as you would tell a friend. "
            + "I ask a few short questions, cheapest and safest first, and always say why.");

    public static string Heard(CaseView view, IEnumerable<string> complaints) =>
        $"So {Say.Join([.. complaints.Select(c => view.Knowledge.Complaints[c].Called)])}. (If I got that wrong, just say so.)";

    public static Card NotedOfBike(IReadOnlyList<string> facts) => new($"Noted of your bike: {Say.Join(facts)}", [], []);

    public static Card Why(CaseView view, Ask open) => open.Kind switch
    {
        AskKind.Check => WhyCheck(view, view.Knowledge.Checks[open.Subject]),
        AskKind.Repair => new Card("Why I think so", [.. Reasons.Blocks(view, TopMended(view, open.Subject), 6, 4), Beliefs.Bars(view, 6)], []),
        AskKind.Fact => Plain("Why I ask", "Depending on the answer my very next step is a different one. Otherwise I would not ask."),
        AskKind.Ready => Plain("Why I ask", "The next step puts your hands near an engine, a chain and parts that get hot. We go on once none of them can hurt you or anybody beside you."),
        AskKind.Either => Plain("Why I ask", view.Knowledge.Eithers.First(e => e.Id == open.Subject).Why),
        AskKind.AllSafe => Plain("Why I ask", "What you told me can hurt somebody. Nothing else counts until that is safe."),
        _ => Plain("Why I ask", "It decides what comes next."),
    };

    public static Card ShowMe(CaseView view, Ask open)
    {
        if (open.Kind == AskKind.Either)
        {
            var either = view.Knowledge.Eithers.First(e => e.Id == open.Subject);
            return new Card($"How to tell {either.Called}", [new DrawingBlock(either.ShowMe ?? either.Why)], []);
        }

        var check = view.Knowledge.Checks[open.Subject];
        return new Card($"How to: {check.Ask}", [.. Say.Steps("How", check.How), new DrawingBlock(check.ShowMe ?? check.Why)], []);
    }

    /// <summary>The rules of the club changed, and what was asked is no longer among them.</summary>
    public static Card NotAskedAnyMore(Ask open) => new(
        "That question has gone",
        [new TextBlock("The club's rules were changed since I asked it. What you told me counts, and I go on from there.")],
        [new CardOption(OptionId.For(open, OptionId.GoOn), "Go on"), new CardOption(OptionId.For(open, OptionId.Leave), "Leave it", OptionRole.Help)]);

    public const string RulesChanged = "The club's rules have changed since we last spoke. I have thought it over anew with all that you told me.";

    public static Card HowTo(HowToRule howTo) => new(
        Say.Capital(howTo.Called),
        [.. Say.Cautions(howTo.Cautions), .. Say.Steps("", howTo.Answer), Say.Text($"Source: {howTo.Origin.Source}.")],
        []);

    public static Card NotMine(string? because) => because switch
    {
        "empty" => Plain("I am listening", "Tell me in a few words what the bike does: it drags, it slips, the lever is heavy, the slack keeps coming back ..."),
        "other-machine" => Plain("Not my machine", "I only know small two-stroke engine kits on bicycles. For that machine please ask somebody who knows it."),
        "other-part" => Plain(
            "Not my corner of it",
            "So far I know the clutch and what works it. For the rest of the engine please ask in the club. If the clutch plays up as well, tell me."),
        "too-long" => Plain("That is a lot at once", "Tell me in two or three sentences what the bike does now; we come to the rest step by step."),
        "chatter" => Plain("At your service", "When the clutch plays up, tell me in your own words what the bike does, and we find it."),
        _ => Plain("I did not get that", "Tell me in other words what the bike does, and when: pulling away, riding, lever in, lever out, hot, cold ..."),
    };

    public static Card NotUnderstood(AskKind open) => Plain("I did not get that", open switch
    {
        AskKind.None => "Tell me in other words what the bike does.",
        AskKind.Ready => "I wait here until you are at the bike and it is safe; then say 'ready'. If it will not be today, just leave it: nothing is lost. Or say 'helper' and a human goes on.",
        AskKind.Repair or AskKind.RepairStep => "Have you done it? Then say 'done', and I ask how it went. If you can't, say 'can't do it', and I look for another way. 'Helper' gets you a human.",
        AskKind.DidItHold => "How does it go now: is it gone, better, or no change?",
        _ => "Pick one of the answers, or say it in other words. 'Not sure' is a fair answer.",
    });

    public static Card TakenAsNotSure() => Plain("I still do not get that", "That is my limit, not yours. I take it as 'not sure', which spoils nothing.");

    public static Card CannotTell(EitherRule rule) => Plain("I cannot tell from that", rule.Why);

    public static Card LookFirst() => Plain(
        "Then it stands until you can look",
        "Leave the bike parked and the engine off. The question stays open: answer it when you are beside the bike, in an hour or in a week.");

    public static Card InOtherWords() => Plain(
        "In other words, then",
        "What does the bike do, and when? For example: \"lever in, it still pulls\", \"it revs up and does not push\", \"the slack is back after three rides\".");

    public static Card NotAnOption() => Plain("That is not one of my answers", "Please use the answers below, or words.");

    public static Card Late(bool closed) => Plain(
        "That question is over",
        closed ? "This case is closed. Tell me about a new trouble whenever you like." : "It was answered already; nothing is changed. Here is where we are:");

    public static Card NothingToTakeBack() => Plain("Nothing to take back", "This is the first question.");

    public static Card StillHolds(Ask open) => new(
        "This one is mended",
        [Say.Text("If the same trouble is back, say so. For a new trouble just tell me what the bike does.")],
        [Say.Help(open, OptionId.CameBack, "It came back")]);

    private static Card WhyCheck(CaseView view, CheckRule check)
    {
        var points = Pointing.Of(view, check)
            .Select(p => $"\"{QuestionCards.Label(check, p.State)}\" would point to: {Beliefs.Is(view.Knowledge, p.Fault)} ({Beliefs.Word(p.Chance)})");
        ImmutableArray<CardBlock> leading = view.Complaints.Any() ? [Beliefs.Bars(view, 4)] : [];
        return new Card("Why I ask", [Say.Text(check.Why), .. Say.List("What the answers would tell me", points), .. leading], []);
    }

    private static string TopMended(CaseView view, string repair) => RepairCards.Mended(view, view.Knowledge.Repairs[repair])[0].Fault;

    private static Card Plain(string title, string text) => new(title, [Say.Text(text)], []);
}
