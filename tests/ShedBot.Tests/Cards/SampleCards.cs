using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Turns;

namespace ShedBot.Tests.Cards;

/// <summary>Cards that hold every kind of block once, about an invented bell.</summary>
internal static class SampleCards
{
    public static Card Everything { get; } = new(
        "How does the hammer swing when you push it?",
        [
            new TextBlock("A hammer that sticks or is not there cannot strike, and then the bell stays silent however hard the thumb piece is pushed."),
            new CautionBlock("CAUTION", "a sharp edge under the dome", "it cuts fingers", "wear gloves."),
            new StepsBlock("How", 1, [new CardStep("Lift the dome off.", null), new CardStep("Push the hammer with a finger.", "Gently: the pin is thin and bends when it is pushed hard, and a bent pin does not come straight again.")]),
            new ListBlock("What the answers would tell me", ["\"It sticks\" would point to rust", "\"It is not there\" would point to a lost hammer"]),
            new DrawingBlock("( dome )\n   |=o   <- the hammer\n"),
            new BeliefBlock([new BeliefLine("the hammer is rusted to its pin", 0.853, "very likely"), new BeliefLine("a cable damps the dome", 0.0004, "almost no chance")]),
        ],
        [
            new CardOption(new OptionId(3, OptionId.State("full")).ToString(), "It swings all the way"),
            new CardOption(new OptionId(3, OptionId.State("stuck")).ToString(), "It sticks"),
            new CardOption(new OptionId(3, OptionId.NotSure).ToString(), "Not sure", OptionRole.Help),
            new CardOption(new OptionId(3, OptionId.Cannot).ToString(), "Can't do that now", OptionRole.Help),
            new CardOption(new OptionId(3, OptionId.ShowMe).ToString(), "Show me how", OptionRole.Help),
            new CardOption(new OptionId(3, OptionId.Why).ToString(), "Why do you ask?", OptionRole.Help),
            new CardOption(new OptionId(3, OptionId.Back).ToString(), "Back", OptionRole.Help),
            new CardOption(new OptionId(3, OptionId.Change).ToString(), "Change an earlier answer", OptionRole.Help),
        ],
        new CardProgress(2, "the hammer is rusted to its pin", "very likely"));

    /// <summary>Words that would steer a terminal if they were shown as they are.</summary>
    public static Card Hostile { get; } = new(
        "In the rider's words: \u001b[2J[red]boo[/]",
        [new TextBlock("\u202egnir\u0007 [bold]x[/]"), new ListBlock("", ["\u001b]0;title\u0007"]), new DrawingBlock("\u001b[31m/\\")],
        [new CardOption("1/state:x", "[green]pick[/] \u001b[5m")]);
}
