using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

public sealed class RestMetersTests
{
    private static readonly CancellationToken None = CancellationToken.None;

    [Fact]
    public async Task ARequestWithTrouble_IsCountedByRouteAndKind()
    {
        var answers = new Queue<HttpResponseMessage>([Answers.Refusal(503, 0), Answers.TooMany("user", "2"), Answers.Ok()]);
        using var world = new RestWorld(_ => answers.Dequeue());

        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        const string route = "route=GET channels/{channel_id}";
        Assert.Equal(
            [$"{route} status=5xx", $"{route} status=4xx", $"{route} status=2xx"],
            world.Measured.Where(m => m.Instrument == "shedbot.rest.requests").Select(m => m.Tags));
        Assert.Equal([$"{route} scope=User"], world.Measured.Where(m => m.Instrument == "shedbot.rest.limited").Select(m => m.Tags));
        Assert.Equal([(1.0, route)], world.Measured.Where(m => m.Instrument == "shedbot.rest.retries").Select(m => (m.Value, m.Tags)));
        Assert.Equal([(2.0, route)], world.Measured.Where(m => m.Instrument == "shedbot.rest.wait").Select(m => (m.Value, m.Tags)));
    }

    [Fact]
    public async Task NoAnswer_IsCountedAsNone()
    {
        using var world = new RestWorld(_ => Task.FromException<HttpResponseMessage>(new HttpRequestException("hung up")));

        await world.RunAsync(r => r.FollowUpAsync(world.Interaction(), new MessageBody("x"), [], None));

        Assert.Equal(
            ["route=POST webhooks/{webhook_id}/{webhook_token} status=none"],
            world.Measured.Where(m => m.Instrument == "shedbot.rest.requests").Select(m => m.Tags));
    }

    // Source of an id's time: the platform's description, reference, "Snowflakes".
    [Fact]
    public async Task AnAnswer_IsTimedFromTheInteractionsId()
    {
        using var world = new RestWorld(_ => Answers.Ok("{}"));
        var interaction = world.Interaction();
        world.Time.Advance(TimeSpan.FromMilliseconds(420));

        await world.RunAsync(r => r.AnswerAsync(interaction, new InteractionAnswer(AnswerTypes.DeferredUpdate), [], None));

        Assert.Equal([0.42], world.Measured.Where(m => m.Instrument == "shedbot.rest.answer").Select(m => m.Value));
    }
}
