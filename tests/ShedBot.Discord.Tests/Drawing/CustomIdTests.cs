using CsCheck;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class CustomIdTests
{
    [Theory]
    [InlineData("a", "k7f3q9", "12/state:full")]
    [InlineData("words", "k7f3q9", "")]
    [InlineData("form", "new", "private")]
    public void Read_WhatWasWritten_GivesItBack(string verb, string @case, string rest)
    {
        var id = new CustomId(verb, new CaseId(@case), rest);
        Assert.Equal($"sb1:{verb}:{@case}:{rest}", id.ToString());
        Assert.Equal(id, CustomId.Read(id.ToString()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("sb1")]
    [InlineData("sb1:a:")]
    [InlineData("sb1:a::12/state:full")]
    [InlineData("sb2:a:k7f3q9:12/state:full")]
    [InlineData("sb1:A:k7f3q9:12/state:full")]
    [InlineData(" sb1:a:k7f3q9:12/state:full")]
    public void Read_MadeUp_IsNone(string? text) => Assert.Null(CustomId.Read(text));

    [Fact]
    public void Read_LongerThanThePlatformSends_IsNone()
    {
        var longest = "sb1:a:k7f3q9:" + new string('x', 87);
        Assert.True(CustomId.Read(longest)!.Value.Fits);
        Assert.Null(CustomId.Read(longest + "x"));
    }

    [Fact]
    public void Read_AnyText_NeverThrows() => Gen.OneOf(Gen.String, Gen.String.Select(s => "sb1:a:" + s)).Sample(text =>
    {
        var id = CustomId.Read(text);
        return id is null || id.Value.ToString() == text;
    });
}
