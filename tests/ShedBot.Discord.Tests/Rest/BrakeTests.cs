using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source: the platform's description, topics/rate-limits, "Invalid Request Limit": 401, 403 and 429 without scope shared count, over ten minutes. Our own thresholds lie far below its 10,000.</summary>
public sealed class BrakeTests
{
    private static readonly CancellationToken None = CancellationToken.None;

    [Fact]
    public async Task Forbidden_UpToTheStop_NothingButInteractionsGoesTillTheWindowFrees()
    {
        using var world = new RestWorld(
            s => s.Path.Contains("/interactions/", StringComparison.Ordinal) || s.At > new DateTimeOffset(2026, 5, 3, 12, 5, 0, TimeSpan.Zero) ? Answers.Ok() : Answers.Refusal(403, 50001),
            o => o with { WarnAt = 3, StopAt = 10, PerSecond = 50 });
        for (var n = 0; n < 10; n++)
            Assert.Equal(Trouble.Forbidden, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);

        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);
        Assert.Equal(10, world.Requests.Count);
        Assert.Null((await world.RunAsync(r => r.AnswerAsync(world.Interaction(), new InteractionAnswer(AnswerTypes.DeferredUpdate), [], None))).Refused);

        world.Time.Advance(TimeSpan.FromMinutes(10) - TimeSpan.FromSeconds(1));
        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);
        world.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Null((await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused);
        Assert.Equal(2, world.Log.Lines.Count(l => l.Level == Microsoft.Extensions.Logging.LogLevel.Warning && l.Text.Contains("were refused", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("user", 1)]
    [InlineData("global", 1)]
    [InlineData("shared", 0)]
    public async Task TooMany_ByScope_CountsUnlessShared(string scope, int counted)
    {
        var first = true;
        using var world = new RestWorld(_ =>
        {
            (var now, first) = (first, false);
            return now ? Answers.TooMany(scope, "1") : Answers.Ok();
        });

        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(counted, world.Measured.Count(m => m.Instrument == "shedbot.rest.invalid"));
    }

    [Theory]
    [InlineData(400, 50035)]
    [InlineData(404, 10003)]
    public async Task OtherRefusals_AreNotCounted(int status, int code)
    {
        using var world = new RestWorld(_ => Answers.Refusal(status, code));

        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.DoesNotContain(world.Measured, m => m.Instrument == "shedbot.rest.invalid");
    }

    [Fact]
    public void Defaults_StayFarBelowTheDoorClosing()
    {
        var options = new RestOptions(new Uri("https://club.invalid"), "1");

        Assert.Equal((500, 5000, 50), (options.WarnAt, options.StopAt, options.PerSecond));
    }

    [Fact]
    public async Task Unauthorized_OnARouteOfTheBot_StopsEverythingForGoodAndSaysSoOnce()
    {
        using var world = new RestWorld(_ => Answers.Refusal(401, 0, "401: Unauthorized"));

        Assert.Equal(Trouble.Token, (await world.RunAsync(r => r.GetMeAsync(None))).Refused!.Trouble);
        Assert.Equal(Trouble.Token, (await world.RunAsync(r => r.GetMeAsync(None))).Refused!.Trouble);
        world.Time.Advance(TimeSpan.FromDays(1));
        Assert.Equal(Trouble.Token, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);

        Assert.Single(world.Requests);
        Assert.Equal(1, world.TokenRefusals);
    }

    // Source: topics/opcodes-and-status-codes (50027, "Invalid webhook token provided"); public issue thread 6851.
    [Theory]
    [InlineData(50027)]
    [InlineData(0)]
    public async Task Unauthorized_OnARouteOfAnInteraction_OnlyThatInteractionIsOver(int code)
    {
        using var world = new RestWorld(s => s.Path.Contains("/webhooks/", StringComparison.Ordinal) ? Answers.Refusal(401, code) : Answers.Ok());

        var (_, refused, _) = await world.RunAsync(r => r.EditAnswerAsync(world.Interaction(), new MessageBody("x"), [], None));

        Assert.Equal(Trouble.InteractionOver, refused!.Trouble);
        Assert.Equal(0, world.TokenRefusals);
        Assert.Null((await world.RunAsync(r => r.GetMeAsync(None))).Refused);
    }
}
