using System.Diagnostics;
using CsCheck;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Knowledge.Tests.Understanding;

public class OddInputTests
{
    [Theory]
    [InlineData("", "empty")]
    [InlineData("   \n\t ", "empty")]
    [InlineData("🔥🔥🔥", "empty")]
    [InlineData("12345", "empty")]
    [InlineData("?!...", "empty")]
    [InlineData("thanks mate", "chatter")]
    [InlineData("my car's clutch pedal goes to the floor", "other-machine")]
    [InlineData("no spark at the plug", "other-part")]
    [InlineData("problem with my clutch", "unclear")]
    public void Understand_NothingToGoOn_SaysWhy(string message, string because)
    {
        var heard = Shipped.Listener.Understand(message);
        Assert.True(heard.NotMine);
        Assert.Equal(because, heard.NotMineBecause);
    }

    [Theory]
    [InlineData("c̷l̶u̸t̵c̴h̷ ̶s̵l̴i̷p̶s̵")]
    [InlineData("ＣＬＵＴＣＨ ＳＬＩＰＳ")]
    [InlineData("cluuuutch sliiiips")]
    [InlineData("\u202Eclutch slips\u202C")]
    public void Understand_LettersInDisguise_AreStillRead(string message) =>
        Assert.Equal("slips", Assert.Single(Shipped.Listener.Understand(message).Complaints).Id);

    [Fact]
    public void Understand_AnyCharacters_NeverThrowsAndAgreesWithItself() =>
        Gen.String.Sample(text =>
        {
            var (one, two) = (Shipped.Listener.Understand(text), Shipped.Listener.Understand(text));
            return one.NotMine == two.NotMine && one.Emergency == two.Emergency && one.Complaints.SequenceEqual(two.Complaints)
                && one.Complaints.All(c => c.Score is > 0 and <= 1);
        }, iter: 2000);

    [Fact]
    public void Understand_LonelySurrogate_IsRead() => Assert.True(Shipped.Listener.Understand("\uD83D").NotMine);

    [Theory]
    [InlineData("a")]
    [InlineData("clutch slips, ")]
    [InlineData("not ")]
    [InlineData("xqzwv ")]
    public void Understand_HugeMessage_IsCutAndQuick(string piece)
    {
        var huge = string.Concat(Enumerable.Repeat(piece, 2_000_000 / piece.Length));
        var clock = Stopwatch.StartNew();
        var heard = Shipped.Listener.Understand(huge);
        Assert.Equal("too-long", heard.NotMineBecause);
        // Generous for a busy machine: what is read is 4,000 characters, whatever the length.
        Assert.InRange(clock.ElapsedMilliseconds, 0, 2000);
    }

    [Fact]
    public void Understand_HugeMessageThatBeginsWithDanger_NoticesIt() =>
        Assert.Equal("fuel-leak", Shipped.Listener.Understand("fuel is leaking on the hot engine. " + new string('x', 10_000)).Emergency);

    [Fact]
    public void Understand_FromManyThreads_AgreesWithOne()
    {
        string[] messages = ["clutch slips uphill", "lever very heavy", "it squeaks when it bites", "hello all"];
        var alone = messages.Select(m => Shipped.Listener.Understand(m).Complaints.FirstOrDefault()).ToList();
        Parallel.For(0, 200, i => Assert.Equal(alone[i % 4], Shipped.Listener.Understand(messages[i % 4]).Complaints.FirstOrDefault()));
    }

    [Fact]
    public void Understand_PhraseJustAddedByAModerator_IsHeardAtOnce()
    {
        const string saying = "the whole thing is yodelling like a goatherd";
        Assert.Empty(Shipped.Listener.Understand(saying).Complaints);

        var old = Shipped.Knowledge.Complaints["squeaks"];
        var after = Shipped.Knowledge with
        {
            Complaints = Shipped.Knowledge.Complaints.SetItem("squeaks", old with { RidersSay = old.RidersSay.Add("yodelling like a goatherd") }),
        };
        Assert.Equal("squeaks", Listener.For(after).Understand(saying).Complaints[0].Id);
    }
}
