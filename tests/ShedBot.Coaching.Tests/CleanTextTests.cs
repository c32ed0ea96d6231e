using ShedBot.Coaching.Cards;

namespace ShedBot.Coaching.Tests;

public sealed class CleanTextTests
{
    [Theory]
    [InlineData("a\u001b[31mred\u0007\0", "a[31mred")]
    [InlineData("a\tb\r\nc", "a b\nc")]
    [InlineData("\u202eevil\u2066\u200f", "evil")]
    [InlineData("\u009b2J", "2J")]
    [InlineData("grüße שלום 😀", "grüße שלום 😀")]
    public void Of_TextThatSteersATerminal_KeepsOnlyWhatIsRead(string text, string expected) =>
        Assert.Equal(expected, CleanText.Of(text));

    // Half a character cannot stand in an attribute's text, so it is made here.
    [Fact]
    public void Of_HalfACharacter_IsReplaced() => Assert.Equal("a\ufffdb", CleanText.Of("a" + (char)0xD83D + "b"));

    [Fact]
    public void OneLine_LongText_IsCutBetweenWholeCharacters() => Assert.Equal("a😀…", CleanText.OneLine(" a😀bcd ", 3));

    [Fact]
    public void OneLine_TextOfTheLimit_IsNotCut() => Assert.Equal("a😀b", CleanText.OneLine("a😀b", 3));
}
