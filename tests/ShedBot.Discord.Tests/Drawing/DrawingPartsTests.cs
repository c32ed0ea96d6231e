using ShedBot.Discord.Drawing;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class DrawingPartsTests
{
    [Fact]
    public void Of_SentencesRoundADrawing_AreTextOfTheirOwn()
    {
        var parts = DrawingParts.Of("Seen from the side of\nthe pump.\n\n   [==]   lid\n    ||\n\nThe lid sits flat on the rim\nall round.\n");
        Assert.Equal("Seen from the side of the pump.", parts.Above);
        Assert.Equal("   [==]   lid\n    ||", parts.Lines);
        Assert.Equal("The lid sits flat on the rim all round.", parts.Below);
    }

    [Theory]
    [InlineData("good            poor\n [==]           [=\\")]
    [InlineData("lid\n [==]\nrim")]
    [InlineData(" [==]\n      the lid of the pump")]
    public void Of_LabelsOfADrawing_StayWithIt(string text) => Assert.Equal(new DrawingParts("", text, ""), DrawingParts.Of(text));

    [Fact]
    public void Of_SentencesOnly_LeavesNoDrawing()
    {
        var parts = DrawingParts.Of("Hang the scale on the lever and pull.\nWrite down what it says.");
        Assert.Equal(("", "Hang the scale on the lever and pull.\nWrite down what it says."), (parts.Lines, parts.Above + parts.Below));
    }
}
