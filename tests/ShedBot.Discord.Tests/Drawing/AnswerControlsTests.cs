using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class AnswerControlsTests
{
    private static readonly CaseId Case = new("k7f3q9");

    [Theory]
    [InlineData(5, 40, 2)]
    [InlineData(6, 5, 3)]
    [InlineData(2, 41, 3)]
    public void Of_AnswersByNumberAndLength_AreButtonsOrAList(int count, int length, int expectedType)
    {
        var rows = AnswerControls.Of(Asking([.. Enumerable.Range(0, count).Select(i => new string((char)('a' + i), length))]), Case, words: false);
        Assert.All(rows.SelectMany(r => r.Components!), c => Assert.Equal(expectedType, c.Type));
    }

    [Fact]
    public void Of_ShortAnswers_ShareARowAndLongerOnesDoNot()
    {
        Assert.Single(AnswerControls.Of(Asking("Yes", "No"), Case, words: false));
        Assert.Equal(2, AnswerControls.Of(Asking("Firm, same bite point each pull", "Soft or springy"), Case, words: false).Count);
    }

    [Fact]
    public void Of_IdTooLongForAButton_GoesIntoAListWhichHoldsIt()
    {
        var id = "17/state:" + new string('x', 80);
        var rows = AnswerControls.Of(new Card("t", [], [new CardOption(id, "Yes")]), Case, words: false);
        Assert.Equal(id, Assert.Single(Assert.Single(Assert.Single(rows).Components!).Options!).Value);
    }

    [Fact]
    public void Of_MoreAnswersThanAListHolds_MakesASecondList()
    {
        var rows = AnswerControls.Of(Asking([.. Enumerable.Range(0, 30).Select(i => $"Answer {i}")]), Case, words: false);
        Assert.Equal([25, 5], rows.Select(r => r.Components![0].Options!.Count));
        Assert.Equal(2, rows.Select(r => r.Components![0].CustomId).Distinct().Count());
    }

    [Fact]
    public void Draw_AnswerLongerThanAListShows_IsInTheCardInFull()
    {
        var longest = string.Join(' ', Enumerable.Repeat("word", 60)) + " end";
        var drawn = Assert.Single(CardDrawing.Draw([Asking("Short", longest)], Case, 1000, ShedBot.Discord.Pictures.CardPictures.None, DrawContext.Bare));
        Assert.Contains(Seen.Texts(drawn), t => t.Contains("**2.** " + longest, StringComparison.Ordinal));
        Assert.Equal(["1. Short", "2. word word"], Seen.Lists(drawn).Single().Options!.Select(o => o.Label[..Math.Min(12, o.Label.Length)]));
    }

    [Fact]
    public void Of_Helps_AreQuietAndEndWithOnesOwnWords()
    {
        var card = new Card("t", [], [new CardOption("3/state:full", "Full"), new CardOption("3/danger:fuel-leak", "I smell fuel"), new CardOption("3/back", "Back", OptionRole.Help)]);
        var buttons = AnswerControls.Of(card, Case, words: true).SelectMany(r => r.Components!).ToList();
        Assert.Equal(["Full", "I smell fuel", "Back", "What do you think?", "In my own words"], buttons.Select(b => b.Label));
        Assert.Equal([ButtonStyles.Primary, ButtonStyles.Danger, ButtonStyles.Secondary, ButtonStyles.Secondary, ButtonStyles.Secondary], buttons.Select(b => b.Style!.Value));
        Assert.Equal("sb1:words:k7f3q9:3", buttons[^1].CustomId);
    }

    [Fact]
    public void Of_EmptyLabel_StillHasOne() =>
        Assert.Equal("(no words)", Assert.Single(Assert.Single(AnswerControls.Of(Asking(" \u0000 "), Case, words: false)).Components!).Label);

    private static Card Asking(params string[] labels) => new("t", [], [.. labels.Select((l, i) => new CardOption($"3/state:s{i}", l))]);
}
