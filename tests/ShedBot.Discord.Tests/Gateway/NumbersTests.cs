using CsCheck;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway;

public sealed class NumbersTests
{
    /// <summary>Source: the platform's public description, "Opcodes and status codes", close event codes; 1000 and 1001, and 4006 which is no longer listed, are our own choice.</summary>
    [Theory]
    [InlineData(null, Next.Resume)]
    [InlineData(1006, Next.Resume)]
    [InlineData(1000, Next.ResumeOnce)]
    [InlineData(1001, Next.ResumeOnce)]
    [InlineData(4000, Next.Resume)]
    [InlineData(4001, Next.Resume)]
    [InlineData(4002, Next.Resume)]
    [InlineData(4003, Next.Identify)]
    [InlineData(4004, Next.Fatal)]
    [InlineData(4005, Next.Resume)]
    [InlineData(4006, Next.Identify)]
    [InlineData(4007, Next.Identify)]
    [InlineData(4008, Next.Resume)]
    [InlineData(4009, Next.Identify)]
    [InlineData(4010, Next.Fatal)]
    [InlineData(4011, Next.Fatal)]
    [InlineData(4012, Next.Fatal)]
    [InlineData(4013, Next.Fatal)]
    [InlineData(4014, Next.Fatal)]
    [InlineData(4015, Next.Resume)]
    public void Meaning_EveryCode_IsAsDescribed(int? code, object next) => Assert.Equal((Next)next, CloseCodes.Meaning(code));

    /// <summary>Our own choice: doubling from one second to sixty, and up to half as much again.</summary>
    [Fact]
    public void Wait_AnyNumberOfFailures_DoublesUpToAMinuteAndAHalf() => Gen.Select(Gen.Int[0, 100_000], Gen.Double[0, 0.999]).Sample((failures, chance) =>
    {
        var whole = Math.Min(60, Math.Pow(2, Math.Min(failures, 30)));
        Assert.InRange(Backoff.Wait(failures, chance).TotalSeconds, whole, whole * 1.5);
    });

    /// <summary>Source: the platform's public description, "Gateway", rate limiting: 120 sends in 60 s. Ten are kept for what must be sent.</summary>
    [Fact]
    public void Take_AnyTimesOfSending_NeverMoreThan110InAMinuteThatCouldBeLeftOut() =>
        Gen.Int[0, 2000].Array[1, 400].Sample(
            gaps =>
            {
                var clock = new SteppedClock();
                var budget = new SendBudget(clock);
                var sent = new List<DateTimeOffset>();
                foreach (var gap in gaps)
                {
                    clock.Advance(TimeSpan.FromMilliseconds(gap));
                    var now = clock.GetUtcNow();
                    var inWindow = sent.Count(s => now - s < TimeSpan.FromSeconds(60));
                    Assert.Equal(inWindow < 110, budget.Take(needed: false));
                    if (inWindow < 110)
                        sent.Add(now);
                }
            },
            iter: 50);

    [Fact]
    public void Checked_ValuesThePlatformWouldNotTake_AreRefused()
    {
        var options = new GatewayOptions(new BotToken("t"));
        Assert.Throws<ArgumentOutOfRangeException>(() => (options with { Shards = 0 }).Checked());
        Assert.Throws<ArgumentOutOfRangeException>(() => (options with { Presence = new string('x', 129) }).Checked());
        Assert.Same(options, options.Checked());
    }

    [Fact]
    public void BotToken_ShownByMistake_ShowsNothing()
    {
        var options = new GatewayOptions(new BotToken(" secret\n"));
        Assert.DoesNotContain("secret", $"{options} {options.Token}", StringComparison.Ordinal);
        Assert.Equal("secret", options.Token.Reveal());
        Assert.Throws<ArgumentException>(() => new BotToken(" \n"));
        Assert.Throws<ArgumentException>(() => new BotToken("two words"));
    }

    /// <summary>Source: the platform's public description: a payload over 4096 bytes closes with 4002.</summary>
    [Fact]
    public void Send_APayloadThatIsTooLong_IsNotSent()
    {
        var writer = new GatewayWriter(new SteppedClock(), Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance);
        Assert.False(writer.Send(3, new byte[4097], needed: true));
        Assert.True(writer.Send(3, new byte[4096], needed: true));
    }
}
