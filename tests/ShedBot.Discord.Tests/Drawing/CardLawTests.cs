using System.Collections.Immutable;
using CsCheck;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class CardLawTests
{
    private static readonly DrawContext Context = new(WordsButton: true, "<@1>", AllowedMentions.User(new Snowflake(1)), "a small line");

    // Words, marks, calls, emoji, halves of letters, right-to-left turns, long runs without a blank.
    private static readonly Gen<string> Bit = Gen.OneOf(
        Gen.Const(" "), Gen.Const("\n"), Gen.Const(". "), Gen.String[Gen.Char['a', 'z'], 1, 12], Gen.String[Gen.Char[' ', '~'], 1, 20],
        One("@everyone", "<@1>", "<@&2>", "**", "```", "`", "||", "# ", "> ", "- ", "1. ", "[a](https://example.org)", "</x:1>", "<t:1:R>", ":wave:", "\\"),
        One("🔧", "👩‍🔧", "e\u0301", "\uD83D", "\uDD27", "\u202E", "\u0000", "\t", "漢字", "Ж", "█"));

    private static readonly Gen<string> Text = Gen.Frequency(
        (6, Bit.Array[1, 12].Select(string.Concat)),
        (1, Bit.Array[200, 900].Select(string.Concat)),
        (1, Gen.Select(Bit, Gen.Int[1, 1500]).Select((b, n) => string.Concat(Enumerable.Repeat(b, n)))));

    private static readonly Gen<CardBlock> Block = Gen.OneOf<CardBlock>(
        Text.Select(t => (CardBlock)new TextBlock(t)),
        Gen.Select(One("DANGER", "WARNING", "CAUTION", "NOTICE"), Text, Text, Text).Select(t => (CardBlock)new CautionBlock(t.Item1, t.Item2, t.Item3, t.Item4)),
        Gen.Select(Text, Gen.Int[1, 30], Gen.Select(Text, Text.Null()).Array[1, 8])
            .Select(t => (CardBlock)new StepsBlock(t.Item1, t.Item2, [.. t.Item3.Select(s => new CardStep(s.Item1, s.Item2))])),
        Gen.Select(Text, Text.Array[1, 8]).Select(t => (CardBlock)new ListBlock(t.Item1, [.. t.Item2])),
        Text.Select(t => (CardBlock)new DrawingBlock(t)),
        Gen.Select(Text, Gen.Double[0, 1], One("likely", "roughly even chance", "more or less as likely as not")).Array[1, 6]
            .Select(l => (CardBlock)new BeliefBlock([.. l.Select(t => new BeliefLine(t.Item1, t.Item2, t.Item3))])));

    private static readonly Gen<ImmutableArray<CardOption>> Options = Gen.Select(Text.Array[0, 25], One("Back", "Not sure", "Why do you ask?").Array[0, 9], Gen.Int[0, 40])
        .Select((answers, helps, longer) => ImmutableArray.CreateRange(
            answers.Select((a, i) => new CardOption($"9/state:{i}{new string('x', longer)}", a))
                .Concat(helps.Select((h, i) => new CardOption($"9/help{i}", h, OptionRole.Help)))));

    private static readonly Gen<Card> AnyCard = Gen.Select(Text, Block.Array[0, 14], Options, Gen.Select(Gen.Int[0, 40], Text).Select((asked, leading) => new CardProgress(asked, leading, "likely")).Null())
        .Select((title, blocks, options, progress) =>
            new Card("T" + title, [.. blocks], options, progress));

    [Fact]
    public void Draw_AnyCards_HoldsEveryLimitAndLosesNothing() => AnyCard.Array[1, 3].Sample(
        cards => CardLaws.Hold(cards, CardDrawing.Draw(cards, new CaseId("k7f3q9"), 5000, CardPictures.None, Context), Context, 5000), iter: 150);

    [Fact]
    public void Plain_AnyCard_IsOneMessageAndSaysWhenThereIsMore() => AnyCard.Sample(
        card =>
        {
            var plain = CardDrawing.Plain(card);
            Allowed.Check(plain);
            var whole = CardDrawing.Draw([card], new CaseId("k7f3q9"), 5000, CardPictures.None, DrawContext.Bare).Length == 1;
            Assert.Equal(whole, Seen.Texts(plain).Last() != "-# There is more than fits here.");
        },
        iter: 60);

    private static Gen<string> One(params string[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);
}
