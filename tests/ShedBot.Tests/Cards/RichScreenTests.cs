using ShedBot.Cards;
using ShedBot.Coaching.Cards;
using ShedBot.Practice;
using ShedBot.Tests.Approving;
using Spectre.Console;
using Spectre.Console.Testing;

namespace ShedBot.Tests.Cards;

public sealed class RichScreenTests
{
    [Fact]
    public void Show_EveryKindOfBlock_IsDrawn() => Approved.Text(Shown(SampleCards.Everything));

    [Fact]
    public void Show_CardPutOnceMore_LeavesOutWhatStandsFurtherUp() => Assert.Equal(
        Shown(SampleCards.Everything with { Blocks = [] }), Shown(SampleCards.Everything with { Repeated = true }));

    [Fact]
    public void Show_WordsThatSteerATerminal_AreHarmless()
    {
        var text = Shown(SampleCards.Hostile);
        Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
        Assert.Contains("[red]boo[/]", text, StringComparison.Ordinal);
        Assert.Contains("[green]pick[/]", text, StringComparison.Ordinal);
    }

    /// <summary>ANSI Z535.4 (from memory): danger red, warning orange, caution yellow; the word must stand out from its ground.</summary>
    /// <remarks>Contrast: WCAG 2.2, success criterion 1.4.3, at least 4.5 to 1, with its formula of relative luminance.</remarks>
    [Theory]
    [InlineData("DANGER")]
    [InlineData("WARNING")]
    [InlineData("CAUTION")]
    [InlineData("NOTICE")]
    public void SignalColours_OfEachWord_AreReadable(string word)
    {
        var (letters, ground) = RichBlocks.SignalColours[word];
        var (light, dark) = (Luminance(letters), Luminance(ground));
        if (dark > light) (light, dark) = (dark, light);
        Assert.True((light + 0.05) / (dark + 0.05) >= 4.5);
    }

    private static double Luminance(Color colour)
    {
        return 0.2126 * Linear(colour.R) + 0.7152 * Linear(colour.G) + 0.0722 * Linear(colour.B);

        static double Linear(byte part)
        {
            var c = part / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }
    }

    private static string Shown(Card card)
    {
        using var console = new TestConsole();
        console.Profile.Width = 80;
        new RichScreen(console).Show(card, AnswerKeys.Of(card));
        return console.Output.ReplaceLineEndings("\n");
    }
}
