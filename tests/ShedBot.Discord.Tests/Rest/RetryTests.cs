using System.Net;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>What is sent again, and what never. Source: the platform's description, resources/message, "Create Message" (nonce, enforce_nonce); topics/opcodes-and-status-codes (5xx). How often and with which pauses is our own choice.</summary>
public sealed class RetryTests
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly MessageBody Plain = new("words"), WithNonce = new("words", Nonce: "n1", EnforceNonce: true);

    [Fact]
    public async Task BadGateway_HtmlBody_SafeRequestIsSentAgain()
    {
        using var world = Failing(2, _ => Task.FromResult(Html()));

        var (channel, refused, took) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Null(refused);
        Assert.Equal(new Snowflake(1), channel!.Id);
        Assert.Equal(3, world.Requests.Count);
        Assert.InRange(took, TimeSpan.FromSeconds(0.1), TimeSpan.FromSeconds(10));
    }

    [Fact]
    public async Task BadGateway_ForEver_EndsAfterThreeRepeatsAsBusy()
    {
        using var world = Failing(99, _ => Task.FromResult(Html()));

        var (_, refused, _) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal((Trouble.Busy, HttpStatusCode.BadGateway, 0), (refused!.Trouble, refused.Status, refused.Code));
        Assert.Equal(4, world.Requests.Count);
    }

    [Fact]
    public async Task BadGateway_MessageWithoutNonce_IsNotSentAgain()
    {
        using var world = Failing(1, _ => Task.FromResult(Html()));

        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.PostMessageAsync(Room, Plain, [], None))).Refused!.Trouble);
        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task Dropped_MessageWithEnforcedNonce_IsSentAgainTheSame()
    {
        using var world = Failing(1, _ => Drop());

        Assert.Null((await world.RunAsync(r => r.PostMessageAsync(Room, WithNonce, [], None))).Refused);
        Assert.Equal(2, world.Requests.Count);
        Assert.Equal("""{"content":"words","nonce":"n1","enforce_nonce":true}""", world.Requests[0].Text);
        Assert.Equal(world.Requests[0].Text, world.Requests[1].Text);
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData("n1", null)]
    [InlineData("n1", false)]
    public async Task Dropped_MessageWhoseNonceIsNotEnforced_IsNotSentAgain(string? nonce, bool? enforce)
    {
        using var world = Failing(1, _ => Drop());

        var (_, refused, _) = await world.RunAsync(r => r.PostMessageAsync(Room, new MessageBody("words", Nonce: nonce, EnforceNonce: enforce), [], None));

        Assert.Equal((Trouble.Busy, (HttpStatusCode)0), (refused!.Trouble, refused.Status));
        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task Dropped_WhatMayBeRepeated_IsAndTheRestIsNot()
    {
        var interaction = new Interaction(Snowflake.First(DateTimeOffset.UnixEpoch.AddYears(56)), App, 3, InteractionToken);
        var expected = new (string Name, bool Repeats, Func<IDiscordRest, Task> Call)[]
        {
            ("edit a message", true, r => r.EditMessageAsync(Room, Words, Plain, [], None)),
            ("delete a message", true, r => r.DeleteMessageAsync(Room, Words, None)),
            ("thread from a message", true, r => r.StartThreadFromMessageAsync(Room, Words, new ThreadBody("t"), None)),
            ("thread of its own", false, r => r.StartThreadAsync(Room, new ThreadBody("t"), None)),
            ("edit a channel", true, r => r.EditChannelAsync(Room, new ChannelEdit(Archived: true), None)),
            ("add to a thread", true, r => r.AddThreadMemberAsync(Room, Rider, None)),
            ("put commands", true, r => r.PutCommandsAsync(App, default, [], None)),
            ("open a direct conversation", true, r => r.OpenDmAsync(Rider, None)),
            ("edit an answer", true, r => r.EditAnswerAsync(interaction, Plain, [], None)),
            ("follow up", false, r => r.FollowUpAsync(interaction, Plain, [], None)),
            ("answer", true, r => r.AnswerAsync(interaction, new InteractionAnswer(AnswerTypes.DeferredUpdate), [], None)),
        };

        foreach (var (name, repeats, call) in expected)
        {
            using var world = Failing(1, _ => Drop());
            await world.RunAsync(async r =>
            {
                await call(r);
                return true;
            });
            Assert.True(world.Requests.Count == (repeats ? 2 : 1), name);
        }
    }

    [Theory]
    [InlineData(HttpRequestError.ConnectionError)]
    [InlineData(HttpRequestError.NameResolutionError)]
    [InlineData(HttpRequestError.SecureConnectionError)]
    public async Task NeverConnected_EvenAnUnsafeRequest_IsSentAgain(HttpRequestError error)
    {
        using var world = Failing(1, _ => throw new HttpRequestException(error));

        Assert.Null((await world.RunAsync(r => r.PostMessageAsync(Room, Plain, [], None))).Refused);
        Assert.Equal(2, world.Requests.Count);
    }

    [Fact]
    public async Task Silence_SafeRequest_TriesAgainAfterTheTimeOfATry()
    {
        using var world = Failing(1, _ => new TaskCompletionSource<HttpResponseMessage>().Task);

        var (_, refused, took) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Null(refused);
        Assert.InRange(took, TimeSpan.FromSeconds(10), TimeSpan.FromSeconds(12));
    }

    [Fact]
    public async Task Silence_ForEver_EndsWithinPatience()
    {
        using var world = Failing(99, _ => new TaskCompletionSource<HttpResponseMessage>().Task, o => o with { Patience = TimeSpan.FromSeconds(25) });

        var (_, refused, took) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(Trouble.Busy, refused!.Trouble);
        Assert.Equal(TimeSpan.FromSeconds(25), took);
    }

    [Fact]
    public async Task Cancelled_ByTheCaller_IsACancellationAndFreesTheLine()
    {
        using var stop = new CancellationTokenSource();
        using var world = Failing(1, _ => new TaskCompletionSource<HttpResponseMessage>().Task);
        var first = world.Rest.GetChannelAsync(Room, stop.Token);
        var second = world.Rest.GetChannelAsync(Room, stop.Token);
        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        Assert.Null((await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused);
    }

    [Fact]
    public async Task Delete_GoneAlready_IsDone()
    {
        using var world = new RestWorld(_ => Answers.Refusal(404, 10008));

        var (_, refused, _) = await world.RunAsync(async r =>
        {
            await r.DeleteMessageAsync(Room, Words, None);
            return true;
        });

        Assert.Null(refused);
    }

    [Fact]
    public async Task GoodStatus_UnreadableBody_IsBusyAndNotRepeated()
    {
        using var world = new RestWorld(_ => new HttpResponseMessage(HttpStatusCode.OK) { Content = new StringContent("<html>hello</html>") });

        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);
        Assert.Single(world.Requests);
    }

    private static HttpResponseMessage Html() =>
        new(HttpStatusCode.BadGateway) { Content = new StringContent("<html><h1>502</h1></html>", System.Text.Encoding.UTF8, "text/html") };

    private static Task<HttpResponseMessage> Drop() =>
        Task.FromException<HttpResponseMessage>(new HttpRequestException(HttpRequestError.ResponseEnded, "The other side hung up."));

    private static RestWorld Failing(int times, Func<Seen, Task<HttpResponseMessage>> failure, Func<RestOptions, RestOptions>? change = null) =>
        new(s => Interlocked.Decrement(ref times) >= 0 ? failure(s) : Task.FromResult(Answers.Ok(s.Method == "PUT" && s.Path.EndsWith("/commands", StringComparison.Ordinal) ? "[]" : """{"id":"1"}""")), change);
}
