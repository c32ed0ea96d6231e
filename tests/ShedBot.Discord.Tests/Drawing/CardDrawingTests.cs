using System.Text.Encodings.Web;
using System.Text.Json;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>Whole messages as they are sent, of a made-up pump so that they do not change with the club's rules.</summary>
public sealed class CardDrawingTests
{
    private static readonly WireJson Json = new(new JsonSerializerOptions(WireJson.Default.Options) { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" });

    private static readonly CautionBlock Hot = new("CAUTION", "hot barrel after a ride", "it burns hands", "wait 20 minutes before you touch it");

    private static readonly Card Question = new(
        "How does the handle feel?",
        [new TextBlock("So the pump leaks. (If I got that wrong, just say so.)"), new TextBlock("A firm handle is healthy.")],
        [
            new CardOption("3/state:firm", "Firm"), new CardOption("3/state:soft", "Soft"),
            new CardOption("3/not-sure", "Not sure", OptionRole.Help), new CardOption("3/why", "Why do you ask?", OptionRole.Help), new CardOption("3/back", "Back", OptionRole.Help),
        ],
        new CardProgress(2, "the seal is worn", "likely"));

    private static readonly Card Safety = new(
        "Before you put hands near it, is all of this so?",
        [new ListBlock("Safe to put hands on", ["Motor off and cold", "Plug out"])],
        [
            new CardOption("4/ready", "Yes, all of it"), new CardOption("4/not-yet", "Not yet"), new CardOption("4/danger:fuel-leak", "I smell or see fuel"),
            new CardOption("4/danger:smoke", "It is smoking"), new CardOption("4/danger:crack", "Something is cracked"), new CardOption("4/danger:hurt", "Somebody is hurt"),
            new CardOption("4/back", "Back", OptionRole.Help),
        ]);

    private static readonly Card Check = new(
        "Is there oil on the rim?",
        [new TextBlock("Oil there means that the seal lets it by."), Hot, new StepsBlock("How", 1, [new CardStep("Wipe the rim.", null), new CardStep("Pump ten times and look.", "a torch helps")]), new TextBlock("About 2 min, no tools.")],
        [
            new CardOption("5/state:dry", "Dry, or a trace that you can hardly see with a torch"), new CardOption("5/state:wet", "Wet"),
            new CardOption("5/cannot", "Can't do that now", OptionRole.Help), new CardOption("5/show-me", "Show me how", OptionRole.Help),
        ]);

    private static readonly Card Step = new(
        "Step 2 of 3: fit a new seal",
        [new StepsBlock("", 2, [new CardStep("Lay the seal on the rim, lip down.", null)]), new DrawingBlock("   good       bad\n   \\_/        /_\\\n")],
        [new CardOption("6/step-by-step", "Done, next"), new CardOption("6/cannot", "I'm stuck here", OptionRole.Help)]);

    private static readonly Card HandOver = new(
        "Time for one of the old hands: here is all we know",
        [
            new TextBlock("In the rider's words: \"it *leaks* <@1> @everyone\""),
            new ListBlock("Told and checked", ["Handle: soft"]),
            new TextBlock("What I think, as far as it goes:"),
            new BeliefBlock([new BeliefLine("the seal on the plunger is worn or was put in upside down", 0.62, "likely"), new BeliefLine("the barrel is cracked", 0.04, "almost no chance")]),
        ],
        []);

    public static TheoryData<string> Cards => new("question", "safety", "check", "step", "hand-over");

    [Theory]
    [MemberData(nameof(Cards))]
    public void Draw_Card_IsAsApproved(string name)
    {
        var card = name switch
        {
            "question" => Question,
            "safety" => Safety,
            "check" => Check,
            "step" => Step,
            "hand-over" => HandOver,
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
        };
        var context = name == "hand-over" ? DrawContext.Bare with { Footer = "Case k7f3q9" } : new DrawContext(WordsButton: true, "<@1>", AllowedMentions.User(new Snowflake(1)), null);
        var drawn = Assert.Single(CardDrawing.Draw([card], new CaseId("k7f3q9"), 1001, CardPictures.None, context));
        Allowed.Check(drawn);
        Approved.Text(JsonSerializer.Serialize(drawn.Body, Json.MessageBody) + "\n", name);
    }

    [Fact]
    public void Draw_Drawing_IsAPictureWithItsTextInWords()
    {
        // A machine may have no fixed-width typeface; then there is nothing to look at here.
        if (FixedWidthFace.Find(FixedWidthFace.UsualFolders) is not { } face) return;
        var drawn = Assert.Single(CardDrawing.Draw([Step], new CaseId("k7f3q9"), 1001, new CardPictures(face), DrawContext.Bare));
        Allowed.Check(drawn);
        Assert.Equal("drawing-1.png", Assert.Single(drawn.Files).Name);
        Assert.Equal("Step 2 of 3: fit a new seal\n   good       bad\n   \\_/        /_\\", Assert.Single(drawn.Body.Attachments!).Description);
    }

    [Fact]
    public void Draw_SevereAndMildCaution_TakesTheColourOfTheSevere()
    {
        var card = new Card("t", [Hot, new CautionBlock("DANGER", "fuel", "it burns", "no flame")], []);
        var frame = CardDrawing.Draw([card], default, 1001, CardPictures.None, DrawContext.Bare)[0].Body.Components!.Single();
        Assert.Equal(0xB00000, frame.AccentColor);
        Assert.Null(CardDrawing.Draw([Step], default, 1001, CardPictures.None, DrawContext.Bare)[0].Body.Components!.Single().AccentColor);
    }

    [Fact]
    public void Draw_ManyCautionsAndSteps_GoOnInTheNextMessageWithTheirNumbersAndWhole()
    {
        var caution = new CautionBlock("WARNING", new string('h', 700), new string('c', 700), new string('a', 700));
        var steps = new StepsBlock("In this order", 1, [.. Enumerable.Range(1, 60).Select(i => new CardStep($"Do number {i}. {new string('x', 80)}", null))]);
        var drawn = CardDrawing.Draw([new Card("t", [caution, caution, steps], [new CardOption("3/done", "Done")])], new CaseId("k7f3q9"), 1001, CardPictures.None, DrawContext.Bare);
        Assert.True(drawn.Length > 2);
        Assert.All(drawn, Allowed.Check);
        Assert.All(drawn.SelectMany(Seen.Texts).Where(t => t.Contains("WARNING", StringComparison.Ordinal)), t => Assert.Contains(new string('a', 699) + ".", t, StringComparison.Ordinal));
        var lines = drawn.SelectMany(Seen.Texts).SelectMany(t => t.Split('\n')).ToList();
        Assert.Equal(Enumerable.Range(1, 60).Select(i => $"**{i}.** Do number {i}."), lines.Where(l => l.Contains("Do number", StringComparison.Ordinal)).Select(l => l[..(l.IndexOf("xx", StringComparison.Ordinal) - 1)]));
        Assert.All(drawn.SelectMany(Seen.Texts), t => Assert.False(t.EndsWith("In this order:**", StringComparison.Ordinal), "A heading was left behind."));
    }

    [Fact]
    public void BeliefBars_AnyLine_FitsATelephone()
    {
        var bars = BeliefBars.Of(HandOver.Blocks.OfType<BeliefBlock>().Single());
        Assert.All(bars.Split('\n'), l => Assert.InRange(l.Length, 1, 40));
        Assert.Contains(" 62 %  ███████░░░░░  likely", bars, StringComparison.Ordinal);
    }
}
