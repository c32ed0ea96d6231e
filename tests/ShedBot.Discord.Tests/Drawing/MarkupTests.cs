using ShedBot.Discord.Drawing;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class MarkupTests
{
    private const string Apart = "\u200B";

    // The marks are those of the platform's message formatting reference and of CommonMark 0.31.2, 2.4.
    [Theory]
    [InlineData("1/4 turn, 3 mm (about)", "1/4 turn, 3 mm (about)")]
    [InlineData("2*3 and _so_ on", @"2\*3 and \_so\_ on")]
    [InlineData("~~gone~~ ||hidden||", @"\~\~gone\~\~ \|\|hidden\|\|")]
    [InlineData("`code` \\ [a](b)", @"\`code\` \\ \[a\](b)")]
    [InlineData("# big", @"\# big")]
    [InlineData("no # here", "no # here")]
    [InlineData("-# small\n> said\n 1. first\n+ more", "\\-# small\n\\> said\n 1\\. first\n\\+ more")]
    [InlineData("3.5 mm", @"3\.5 mm")]
    [InlineData("see https://example.org/x", @"see https\://example.org/x")]
    [InlineData("at 10:30", "at 10:30")]
    [InlineData(":wave: to all", @"\:wave: to all")]
    [InlineData("@everyone, @Here", "@" + Apart + "everyone, @" + Apart + "Here")]
    [InlineData("<@1> <@!2> <@&3>", @"\<@" + Apart + @"1> \<@" + Apart + @"!2> \<@" + Apart + "&3>")]
    [InlineData("<#4> <t:1:R> </x:5>", @"\<#4> \<t\:1:R> \</x:5>")]
    [InlineData("me@club.example", "me@club.example")]
    public void Safe_TextWithMarks_IsShownAsWritten(string text, string expected) => Assert.Equal(expected, Markup.Safe(text));

    [Theory]
    [InlineData("a\u202Eb\u0000c\u001Bd", "abcd")]
    [InlineData("a\tb\r\nc", "a b\nc")]
    [InlineData("👩‍🔧 é Ж 漢", "👩‍🔧 é Ж 漢")]
    public void Clean_WhatSteersAScreen_GoesAndLettersStay(string text, string expected) => Assert.Equal(expected, Markup.Clean(text));

    [Fact]
    public void Clean_HalfALetter_BecomesTheSignForIt() => Assert.Equal("half \uFFFD here", Markup.Clean("half \uD83D here"));

    [Fact]
    public void Fenced_TextThatWouldEndTheFence_StaysInside()
    {
        var fenced = Markup.Fenced("a ``` b ````");
        Assert.StartsWith("```\n", fenced, StringComparison.Ordinal);
        Assert.EndsWith("\n```", fenced, StringComparison.Ordinal);
        Assert.DoesNotContain("``", fenced[3..^3], StringComparison.Ordinal);
    }

    [Fact]
    public void OneLine_SeveralLines_BecomeOne() => Assert.Equal("a b c", Markup.OneLine(" a\n  b \r\n\nc "));
}
