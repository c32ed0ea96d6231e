using System.Net;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source of every rule here: the platform's published description, page topics/rate-limits.</summary>
public sealed class LimitTests
{
    private static readonly CancellationToken None = CancellationToken.None;

    [Fact]
    public async Task Headers_NothingRemains_NextWaitsForResetAfter()
    {
        using var world = new RestWorld(_ => Answers.Ok().WithLimit(1, 0, "2.5"));
        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        var (_, refused, took) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Null(refused);
        Assert.Equal(TimeSpan.FromSeconds(2.5), took);
    }

    [Fact]
    public async Task Headers_SomeRemain_NobodyWaits()
    {
        var left = 3;
        using var world = new RestWorld(_ => Answers.Ok().WithLimit(3, --left, "10"));
        for (var n = 0; n < 3; n++)
            Assert.Equal(TimeSpan.Zero, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Took);

        Assert.Equal(TimeSpan.FromSeconds(10), (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Took);
    }

    [Theory]
    [InlineData("x", "0", "5")]
    [InlineData("1", "", "5")]
    [InlineData("1", "-1", "5")]
    [InlineData("0", "0", "5")]
    [InlineData("1", "0", "NaN")]
    [InlineData("1", "0", "-5")]
    [InlineData("1", "0", "soon")]
    public async Task Headers_Senseless_AreAsGoodAsNone(string limit, string remaining, string resetAfter)
    {
        using var world = new RestWorld(_ => Answers.Ok()
            .With("X-RateLimit-Limit", limit).With("X-RateLimit-Remaining", remaining).With("X-RateLimit-Reset-After", resetAfter));
        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(TimeSpan.Zero, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Took);
    }

    [Fact]
    public async Task Bucket_SameNameOnTwoRoutes_IsShared()
    {
        using var world = new RestWorld(s => Answers.Ok().WithLimit(2, s.Method == "GET" ? 1 : 0, "7", "one-for-both"));
        await world.RunAsync(r => r.GetChannelAsync(Room, None));
        await world.RunAsync(r => r.EditChannelAsync(Room, new ChannelEdit("new"), None));

        Assert.Equal(TimeSpan.FromSeconds(7), (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Took);
    }

    [Fact]
    public async Task Bucket_SharedAndKnown_CountsForAChannelNotYetSeen()
    {
        using var world = new RestWorld(s => Answers.Ok().WithLimit(1, 0, "7", "one-for-both"));
        await world.RunAsync(r => r.GetChannelAsync(Room, None));
        await world.RunAsync(r => r.EditChannelAsync(Room, new ChannelEdit("new"), None));

        Assert.Equal(TimeSpan.Zero, (await world.RunAsync(r => r.GetChannelAsync(Other, None))).Took);
        Assert.Equal(TimeSpan.FromSeconds(7), (await world.RunAsync(r => r.EditChannelAsync(Other, new ChannelEdit("new"), None))).Took);
    }

    [Fact]
    public async Task Bucket_SameNameOnTwoChannels_IsNotShared()
    {
        using var world = new RestWorld(_ => Answers.Ok().WithLimit(1, 0, "30"));
        await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(TimeSpan.Zero, (await world.RunAsync(r => r.GetChannelAsync(Other, None))).Took);
    }

    [Fact]
    public async Task Bucket_ManyAtOnce_GoInOrder()
    {
        var left = 5;
        using var world = new RestWorld(
            _ =>
            {
                left = left == 0 ? 4 : left - 1;
                return Answers.Ok().WithLimit(5, left, "2");
            },
            Unhurried);

        await world.FinishAsync(Enumerable.Range(0, 20).Select(n => world.Rest.PostMessageAsync(Room, new MessageBody($"{n}"), [], None)));

        Assert.Equal(Enumerable.Range(0, 20).Select(n => $$"""{"content":"{{n}}"}"""), world.Requests.Select(s => s.Text));
        Assert.True(world.Requests[19].At - world.Requests[0].At >= TimeSpan.FromSeconds(6));
    }

    [Fact]
    public async Task Bucket_TwoRoutesFoundToShareWhileOthersWait_NobodyIsForgotten()
    {
        var all = new TaskCompletionSource();
        using var world = new RestWorld(
            async _ =>
            {
                await all.Task;
                return Answers.Ok().WithLimit(1, 0, "1", "one-for-both");
            },
            Unhurried);

        // No answer comes before everybody stands in a line, half of them in one that will turn out to be the wrong one.
        var calls = Enumerable.Range(0, 10).Select(n => n % 2 == 0
            ? world.Rest.GetChannelAsync(Room, None)
            : world.Rest.EditChannelAsync(Room, new ChannelEdit($"{n}"), None)).ToList();
        all.SetResult();
        await world.FinishAsync(calls);

        // The first two went before it was known that they share a limit.
        var times = world.Requests.Select(s => s.At).ToList();
        Assert.Equal(10, times.Count);
        for (var n = 2; n < 10; n++)
            Assert.True(times[n] - times[n - 1] >= TimeSpan.FromSeconds(1), $"request {n}");
    }

    [Fact]
    public async Task TooMany_User_WaitsAsTheBodySaysAndSendsAgain()
    {
        using var world = Refusing(1, () => Answers.TooMany("user", "1.25"));

        var (channel, _, took) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(new Snowflake(1), channel!.Id);
        Assert.Equal(TimeSpan.FromSeconds(1.25), took);
        Assert.Equal(2, world.Requests.Count);
    }

    [Theory]
    [InlineData("user")]
    [InlineData("shared")]
    public async Task TooMany_NotGlobal_OtherChannelsGoOn(string scope)
    {
        using var world = Refusing(1, () => Answers.TooMany(scope, "30"), o => o with { Patience = TimeSpan.FromSeconds(20) });
        var (_, refused, _) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(Trouble.Busy, refused!.Trouble);
        Assert.Equal(TimeSpan.Zero, (await world.RunAsync(r => r.GetChannelAsync(Other, None))).Took);
    }

    [Fact]
    public async Task TooMany_WithoutBody_WaitsAsTheHeaderSays()
    {
        using var world = Refusing(1, () => new HttpResponseMessage(HttpStatusCode.TooManyRequests).With("X-RateLimit-Scope", "user").With("Retry-After", "3"));

        Assert.Equal(TimeSpan.FromSeconds(3), (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Took);
    }

    [Fact]
    public async Task TooMany_WithoutAnything_WaitsAWhileWithEverything()
    {
        using var world = Refusing(1, () => new HttpResponseMessage(HttpStatusCode.TooManyRequests), o => o with { Patience = TimeSpan.FromSeconds(4) });

        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);
        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Other, None))).Refused!.Trouble);
        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task TooMany_WaitLongerThanPatience_FailsAtOnceAndSoDoTheNext()
    {
        using var world = new RestWorld(_ => Answers.TooMany("user", "600"));

        var first = await world.RunAsync(r => r.GetChannelAsync(Room, None));
        var second = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal((Trouble.Busy, TimeSpan.Zero), (first.Refused!.Trouble, first.Took));
        Assert.Equal((Trouble.Busy, TimeSpan.Zero), (second.Refused!.Trouble, second.Took));
        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task TooMany_AgainAndAgain_EndsAfterTheBoundedRepeats()
    {
        using var world = new RestWorld(_ => Answers.TooMany("user", "0.1"));

        var (_, refused, _) = await world.RunAsync(r => r.GetChannelAsync(Room, None));

        Assert.Equal(Trouble.Busy, refused!.Trouble);
        Assert.Equal(5, world.Requests.Count);
    }

    [Fact]
    public async Task TooMany_Global_EverythingWaitsAndOneGoesFirst()
    {
        var refuse = true;
        var held = new TaskCompletionSource();
        RestWorld world = null!;
        world = new RestWorld(
            async _ =>
            {
                if (refuse)
                {
                    refuse = false;
                    return Answers.TooMany("global", "5", global: true);
                }

                // The first one after the pause takes its time; nobody may go beside it.
                if (world.Requests.Count == 2)
                    await held.Task;
                return Answers.Ok();
            },
            Unhurried);
        using var disposed = world;
        var began = world.Time.GetUtcNow();

        var first = world.Rest.GetChannelAsync(new Snowflake(1), None);
        var others = Enumerable.Range(2, 8).Select(n => world.Rest.GetChannelAsync(new Snowflake((ulong)n), None)).ToList();
        await world.FinishAsync(Task.Run(async () =>
        {
            while (world.Requests.Count < 2 || world.Time.GetUtcNow() < began + TimeSpan.FromSeconds(8))
                await Task.Yield();
        }));
        Assert.Equal(2, world.Requests.Count);
        held.SetResult();
        await world.FinishAsync([first, .. others]);

        Assert.All(world.Requests.Skip(1), s => Assert.True(s.At >= began + TimeSpan.FromSeconds(5)));
        Assert.Equal(10, world.Requests.Count);
    }

    [Fact]
    public async Task TooMany_Global_InteractionsGoOn()
    {
        using var world = Refusing(1, () => Answers.TooMany("global", "30", global: true), o => o with { Patience = TimeSpan.FromSeconds(20) });
        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetChannelAsync(Room, None))).Refused!.Trouble);

        var (_, refused, took) = await world.RunAsync(r => r.AnswerAsync(world.Interaction(), new InteractionAnswer(AnswerTypes.DeferredUpdate), [], None));

        Assert.Null(refused);
        Assert.Equal(TimeSpan.Zero, took);
    }

    [Fact]
    public async Task Global_ManyChannels_NeverMoreThanFiftyInASecond()
    {
        using var world = new RestWorld(_ => Answers.Ok(), Unhurried);

        await world.FinishAsync(Enumerable.Range(1, 170).Select(n => world.Rest.GetChannelAsync(new Snowflake((ulong)n), None)));

        var times = world.Requests.Select(s => s.At).Order().ToList();
        for (var n = 50; n < times.Count; n++)
            Assert.True(times[n] - times[n - 50] >= TimeSpan.FromSeconds(1));
    }

    // Where calls run beside each other the clock goes its own way: only the limits may make anything happen.
    private static RestOptions Unhurried(RestOptions options) => options with { Patience = TimeSpan.FromDays(1), Try = TimeSpan.FromDays(1) };

    private static RestWorld Refusing(int times, Func<HttpResponseMessage> refusal, Func<RestOptions, RestOptions>? change = null) =>
        new(_ => Interlocked.Decrement(ref times) >= 0 ? refusal() : Answers.Ok(), change);
}
