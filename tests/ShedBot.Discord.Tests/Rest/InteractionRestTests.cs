using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source: the platform's description, interactions/receiving-and-responding: three seconds, one first answer, a token of fifteen minutes, no bot token needed.</summary>
public sealed class InteractionRestTests
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly InteractionAnswer Update = new(AnswerTypes.Update, new InteractionAnswerData("panel"));

    [Fact]
    public async Task Answer_Taken_GivesBackTheMessageAndCarriesNoBotToken()
    {
        using var world = new RestWorld(_ => Answers.Ok("""{"interaction":{"id":"9","type":3},"resource":{"type":7,"message":{"id":"77","channel_id":"2001"}}}"""));
        var interaction = world.Interaction();

        var (message, _, _) = await world.RunAsync(r => r.AnswerAsync(interaction, Update, [], None));

        Assert.Equal(new Snowflake(77), message!.Id);
        var seen = Assert.Single(world.Requests);
        Assert.Equal($"POST /api/v10/interactions/{interaction.Id}/{InteractionToken}/callback?with_response=true", seen.ToString());
        Assert.Null(seen.Authorization);
        Assert.Equal("""{"type":7,"data":{"content":"panel"}}""", seen.Text);
    }

    [Theory]
    [InlineData(200, """{"interaction":{"id":"9"}}""")]
    [InlineData(200, "unreadable")]
    [InlineData(204, "")]
    public async Task Answer_TakenWithoutAMessage_GivesNone(int status, string body)
    {
        using var world = new RestWorld(_ => Answers.Json((System.Net.HttpStatusCode)status, body));

        var (message, refused, _) = await world.RunAsync(r => r.AnswerAsync(world.Interaction(), new InteractionAnswer(AnswerTypes.DeferredUpdate), [], None));

        Assert.Null(refused);
        Assert.Null(message);
    }

    [Fact]
    public async Task Answer_Dropped_IsSentOnceMoreAtOnce()
    {
        using var world = new RestWorld(_ => Task.FromException<HttpResponseMessage>(new HttpRequestException("hung up")));

        var (_, refused, took) = await world.RunAsync(r => r.AnswerAsync(world.Interaction(), Update, [], None));

        Assert.Equal(Trouble.Busy, refused!.Trouble);
        Assert.Equal(2, world.Requests.Count);
        Assert.Equal(TimeSpan.Zero, took);
    }

    [Fact]
    public async Task Answer_DroppedAfterItWasTaken_CountsAsAnswered()
    {
        var first = true;
        using var world = new RestWorld(_ =>
        {
            (var now, first) = (first, false);
            return now ? Task.FromException<HttpResponseMessage>(new HttpRequestException("hung up")) : Task.FromResult(Answers.Refusal(400, 40060));
        });

        Assert.Equal(Trouble.AlreadyAnswered, (await world.RunAsync(r => r.AnswerAsync(world.Interaction(), Update, [], None))).Refused!.Trouble);
    }

    [Fact]
    public async Task Answer_Silence_EndsBeforeTheThreeSecondsAreOver()
    {
        using var world = new RestWorld(_ => new TaskCompletionSource<HttpResponseMessage>().Task);

        var (_, refused, took) = await world.RunAsync(r => r.AnswerAsync(world.Interaction(), Update, [], None));

        Assert.Equal(Trouble.Busy, refused!.Trouble);
        Assert.InRange(took, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(3));
    }

    [Fact]
    public async Task Answer_TooLate_IsOverAndNotRepeated()
    {
        using var world = new RestWorld(_ => Answers.Refusal(404, 10062));

        Assert.Equal(Trouble.InteractionOver, (await world.RunAsync(r => r.AnswerAsync(world.Interaction(), Update, [], None))).Refused!.Trouble);
        Assert.Single(world.Requests);
    }

    [Theory]
    [InlineData(10008)]
    [InlineData(10015)]
    public async Task EditAnswer_NotFoundOnce_IsTriedASecondLater(int code)
    {
        var first = true;
        using var world = new RestWorld(_ =>
        {
            (var now, first) = (first, false);
            return now ? Answers.Refusal(404, code) : Answers.Ok();
        });

        var (_, refused, took) = await world.RunAsync(r => r.EditAnswerAsync(world.Interaction(), new MessageBody("x"), [], None));

        Assert.Null(refused);
        Assert.Equal(TimeSpan.FromSeconds(1), took);
        Assert.All(world.Requests, s => Assert.Equal($"PATCH /api/v10/webhooks/5001/{InteractionToken}/messages/@original", s.ToString()));
        Assert.All(world.Requests, s => Assert.Null(s.Authorization));
    }

    [Fact]
    public async Task EditAnswer_NotFoundForEver_EndsAfterTwo()
    {
        using var world = new RestWorld(_ => Answers.Refusal(404, 10015));

        Assert.Equal(Trouble.InteractionOver, (await world.RunAsync(r => r.EditAnswerAsync(world.Interaction(), new MessageBody("x"), [], None))).Refused!.Trouble);
        Assert.Equal(2, world.Requests.Count);
    }

    [Fact]
    public async Task EditAnswer_NotFoundAfterFifteenMinutes_IsNotTriedAgain()
    {
        using var world = new RestWorld(_ => Answers.Refusal(404, 10015));
        var interaction = world.Interaction();
        world.Time.Advance(TimeSpan.FromMinutes(15));

        await world.RunAsync(r => r.EditAnswerAsync(interaction, new MessageBody("x"), [], None));

        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task FollowUp_Taken_GoesByTheInteractionsToken()
    {
        using var world = new RestWorld(_ => Answers.Ok("""{"id":"78"}"""));

        var (message, _, _) = await world.RunAsync(r => r.FollowUpAsync(world.Interaction(), new MessageBody("x", Flags: MessageFlags.Ephemeral), [], None));

        Assert.Equal(new Snowflake(78), message!.Id);
        Assert.Equal(($"POST /api/v10/webhooks/5001/{InteractionToken}", null), (world.Requests[0].ToString(), world.Requests[0].Authorization));
    }

    [Fact]
    public async Task Answer_ATokenWithSigns_IsWrittenSoThatThePathHolds()
    {
        using var world = new RestWorld(_ => Answers.Ok());

        await world.RunAsync(r => r.FollowUpAsync(world.Interaction() with { Token = "a/b?c" }, new MessageBody("x"), [], None));

        Assert.Equal("/api/v10/webhooks/5001/a%2Fb%3Fc", world.Requests[0].Path);
    }
}
