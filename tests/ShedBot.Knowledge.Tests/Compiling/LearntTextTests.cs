using CsCheck;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Knowledge.Tests.Compiling;

public class LearntTextTests
{
    private static readonly Gen<string> Id = Gen.Char["abc-19"].Array[1, 6].Select(c => new string(c));

    private static readonly Gen<Learnt> Any = Gen.Select(
        Gen.Select(Id, Gen.Double[Learnt.LeastTimes, Learnt.MostTimes]).Select((f, t) => new LearntOdds(f, t)).List[0, 8],
        Gen.Select(Id, Id, Id, Gen.Double[Learnt.LeastChance, Learnt.MostChance]).Select((f, g, s, c) => new LearntLink(f, g, s, c)).List[0, 8],
        Gen.Select(Id, Id, Gen.Double[Learnt.LeastChance, Learnt.MostChance]).Select((r, f, c) => new LearntMend(r, f, c)).List[0, 8])
        .Select((odds, links, mends) => Learnt.Of(odds.DistinctBy(o => o.Fault), links.DistinctBy(l => (l.Fault, l.Finding, l.State)), mends.DistinctBy(m => (m.Repair, m.Fault))));

    [Fact]
    public void Read_WhatWasWritten_IsTheSameAgain() => Any.Sample(learnt =>
    {
        var text = LearntText.Write(learnt);
        return LearntText.Read(text) is { Learnt: { } read, Wrong: null } && read.Equals(learnt) && LearntText.Write(read) == text;
    }, iter: 500);

    [Fact]
    public void Write_AFewNumbers_IsPlainLines() => Assert.Equal(
        "learnt 1\nodds worn-pads 1.84\nlink worn-pads lever-feel slack 0.71\nmend new-pads worn-pads 0.9\n",
        LearntText.Write(Learnt.Of([new("worn-pads", 1.84)], [new("worn-pads", "lever-feel", "slack", 0.71)], [new("new-pads", "worn-pads", 0.9)])));

    [Theory]
    [InlineData("", "Line 1")]
    [InlineData("learnt 2\n", "Line 1")]
    [InlineData("learnt 1\nodds a\n", "Line 2: a number is expected")]
    [InlineData("learnt 1\n\nodds a b 1\n", "Line 3: expected 'odds fault number'")]
    [InlineData("learnt 1\nodds a 1,5\n", "a number is expected")]
    [InlineData("learnt 1\nodds a -1\n", "a number is expected")]
    [InlineData("learnt 1\nodds a 1e3\n", "a number is expected")]
    [InlineData("learnt 1\nodds a NaN\n", "must lie between 0.05 and 20")]
    [InlineData("learnt 1\nodds a 25\n", "must lie between 0.05 and 20")]
    [InlineData("learnt 1\nlink a b c 1\n", "must lie between 0.005 and 0.995")]
    [InlineData("learnt 1\nmend a B 0.5\n", "not the id of a rule")]
    [InlineData("learnt 1\nodds a 2\nodds a 3\n", "more than once")]
    public void Read_BadText_IsRefusedWithAReason(string text, string reason)
    {
        var reading = LearntText.Read(text);

        Assert.Null(reading.Learnt);
        Assert.Contains(reason, reading.Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HugeText_IsRefusedUnread() => Assert.Null(LearntText.Read(new string('x', LearntText.MostLetters + 1)).Learnt);
}
