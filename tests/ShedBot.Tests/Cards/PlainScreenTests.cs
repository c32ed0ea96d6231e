using ShedBot.Cards;
using ShedBot.Coaching.Cards;
using ShedBot.Practice;
using ShedBot.Tests.Approving;

namespace ShedBot.Tests.Cards;

public sealed class PlainScreenTests
{
    [Fact]
    public void Show_EveryKindOfBlock_ReadsPlainly() => Approved.Text(Shown(SampleCards.Everything, 72));

    [Fact]
    public void Show_CardPutOnceMore_LeavesOutWhatStandsFurtherUp() => Assert.Equal(
        Shown(SampleCards.Everything with { Blocks = [] }, 72), Shown(SampleCards.Everything with { Repeated = true }, 72));

    [Fact]
    public void Show_WordsThatSteerATerminal_AreHarmless()
    {
        var text = Shown(SampleCards.Hostile, 72);
        Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
        Approved.Text(text);
    }

    [Fact]
    public void Repeat_WithEcho_MarksTheRidersLines()
    {
        var output = new StringWriter { NewLine = "\n" };
        var screen = new PlainScreen(output, 72, echo: true);
        screen.Repeat("it \u001b[1mdrags");
        screen.Repeat("");
        Assert.Equal("> it [1mdrags\n\n>\n\n", output.ToString());
    }

    [Fact]
    public void Repeat_WithoutEcho_SaysNothing()
    {
        var output = new StringWriter();
        new PlainScreen(output, 72, echo: false).Repeat("it drags");
        Assert.Equal("", output.ToString());
    }

    private static string Shown(Card card, int width)
    {
        var output = new StringWriter { NewLine = "\n" };
        new PlainScreen(output, width, echo: false).Show(card, AnswerKeys.Of(card));
        return output.ToString();
    }
}
