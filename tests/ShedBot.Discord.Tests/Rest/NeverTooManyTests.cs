using System.Net;
using CsCheck;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Whatever the platform answers, no more goes out than it allowed. Source: its description, topics/rate-limits: so many requests, and a new count after <c>X-RateLimit-Reset-After</c>.</summary>
public sealed class NeverTooManyTests
{
    private static readonly Gen<(int Limit, int Remaining, double ResetAfter)> Readings =
        from limit in Gen.Int[1, 10]
        from remaining in Gen.Int[0, limit]
        from resetAfter in Gen.Double[0, 20]
        select (limit, remaining, resetAfter);

    [Fact]
    public void Window_AnyReadings_LetsOutNoMoreThanTheLastOneAllowed() =>
        (from readings in Readings.Array[1, 20]
         from steps in Gen.Int[0, 3000].Array[40]
         select (readings, steps)).Sample(run =>
         {
             // One at a time, as a bucket does; an answer comes only now and then, so the count must hold by itself in between.
             var window = new Window();
             var now = TimeSpan.Zero;
             var (allowed, till) = (int.MaxValue, TimeSpan.Zero);
             for (var n = 0; n < run.steps.Length; n++)
             {
                 now += TimeSpan.FromMilliseconds(run.steps[n]);
                 var (limit, remaining, resetAfter) = run.readings[n % run.readings.Length];
                 if (window.FreeAt <= now)
                 {
                     if (now >= till && till > TimeSpan.Zero)
                         (allowed, till) = (int.MaxValue, TimeSpan.Zero);
                     Assert.True(allowed > 0, $"step {n}");
                     allowed = allowed == int.MaxValue ? allowed : allowed - 1;
                     window.Sent(now);
                 }

                 if (n % 3 != 0)
                     continue;
                 window.Heard(new Reading("b", limit, remaining, TimeSpan.FromSeconds(resetAfter)), now);
                 (allowed, till) = (remaining, now + TimeSpan.FromSeconds(resetAfter));
             }
         });

    [Fact]
    public void Window_NothingHeardAfterTheReset_HoldsToTheLimitItKnows() =>
        (from limit in Gen.Int[1, 10] from length in Gen.Int[1, 20] select (limit, length)).Sample(known =>
        {
            var window = new Window();
            window.Heard(new Reading("b", known.limit, 0, TimeSpan.FromSeconds(known.length)), TimeSpan.Zero);
            var now = TimeSpan.FromSeconds(known.length);
            for (var n = 0; n < known.limit; n++)
            {
                Assert.True(window.FreeAt <= now);
                window.Sent(now);
            }

            Assert.Equal(now + TimeSpan.FromSeconds(known.length), window.FreeAt);
        });

    [Fact]
    public void Window_AnswersThatCrossed_CountTheLesser()
    {
        var window = new Window();
        window.Heard(new Reading("b", 5, 1, TimeSpan.FromSeconds(4)), TimeSpan.Zero);
        window.Heard(new Reading("b", 5, 3, TimeSpan.FromSeconds(2)), TimeSpan.Zero, sole: false);
        window.Sent(TimeSpan.Zero);

        Assert.Equal(TimeSpan.FromSeconds(4), window.FreeAt);
    }

    [Fact]
    public async Task Requests_AgainstAPlatformThatCounts_NeverEarnA429OfItsOwn() =>
        await (from limits in Gen.Int[1, 5].Array[3]
               from length in Gen.Int[1, 4]
               from chance in Gen.Int[0, 99].Array[40]
               from calls in Gen.Int[0, 5].Array[24]
               select (limits, length, chance, calls)).SampleAsync(
            async run =>
            {
                var platform = new Counting(run.limits, TimeSpan.FromSeconds(run.length), run.chance);
                using var world = new RestWorld(platform.AnswerAsync, o => o with { Patience = TimeSpan.FromDays(1), Try = TimeSpan.FromDays(1), LimitedRepeats = 50 });

                // One of each first: which routes share a limit can only be known from an answer.
                foreach (var call in Enumerable.Range(0, 6))
                    await world.FinishAsync(Call(world.Rest, call));
                var learnt = platform.Exceeded;
                await world.FinishAsync(run.calls.Select(c => Call(world.Rest, c)));

                Assert.Equal(learnt, platform.Exceeded);
            },
            iter: 40,
            threads: 1);

    [Fact]
    public void Buckets_ManyInteractions_AreForgotten()
    {
        var time = new TestTime();
        var buckets = new Buckets(new Ticker(time));
        for (var n = 1; n <= 20_000; n++)
        {
            buckets.FreeAt(Routes.Answer(new Interaction(new Snowflake((ulong)n), new Snowflake(1), 3, "t")));
            time.Advance(TimeSpan.FromMilliseconds(1));
        }

        Assert.InRange(buckets.Count, 1, 1200);
    }

    private static async Task Call(DiscordRest rest, int call)
    {
        try
        {
            await Request(rest, call);
        }
        catch (DiscordException e) when (e is { Trouble: Trouble.Busy, Status: HttpStatusCode.ServiceUnavailable })
        {
            // The platform failed four times running.
        }
    }

    // Two channels, three routes, of which two share a limit.
    private static Task Request(DiscordRest rest, int call) => (call % 3) switch
    {
        0 => rest.GetChannelAsync(new Snowflake((ulong)(call / 3) + 1), CancellationToken.None),
        1 => rest.EditChannelAsync(new Snowflake((ulong)(call / 3) + 1), new ChannelEdit("n"), CancellationToken.None),
        _ => rest.PostMessageAsync(new Snowflake((ulong)(call / 3) + 1), new MessageBody("x", Nonce: "n", EnforceNonce: true), [], CancellationToken.None),
    };

    /// <summary>Counts in windows of its own, and now and then fails or refuses for a reason that is not ours.</summary>
    private sealed class Counting(int[] limits, TimeSpan length, int[] chance)
    {
        private readonly Lock gate = new();
        private readonly Dictionary<string, (DateTimeOffset Ends, int Used)> windows = [];
        private int asked;

        public int Exceeded { get; private set; }

        public Task<HttpResponseMessage> AnswerAsync(Seen seen)
        {
            lock (gate)
            {
                var kind = seen.Method == "POST" ? 1 : 0;
                var key = $"{kind} {seen.Path.Split('/')[4]}";
                var window = windows.GetValueOrDefault(key);
                if (seen.At >= window.Ends)
                    window = (seen.At + length, 0);
                var draw = chance[asked++ % chance.Length];
                window.Used++;
                windows[key] = window;
                if (window.Used > limits[kind])
                {
                    Exceeded++;
                    return Task.FromResult(Limited(Answers.TooMany("user", $"{(window.Ends - seen.At).TotalSeconds:0.###}"), kind, window, seen.At));
                }

                return Task.FromResult(draw switch
                {
                    < 5 => Limited(Answers.TooMany("shared", "0.5"), kind, window, seen.At),
                    < 8 => Limited(Answers.TooMany("global", "1", global: true), kind, window, seen.At),
                    < 15 => Limited(Answers.Refusal(503, 0), kind, window, seen.At),
                    _ => Limited(Answers.Ok(), kind, window, seen.At),
                });
            }
        }

        private HttpResponseMessage Limited(HttpResponseMessage answer, int kind, (DateTimeOffset Ends, int Used) window, DateTimeOffset now) =>
            answer.WithLimit(limits[kind], Math.Max(0, limits[kind] - window.Used), $"{(window.Ends - now).TotalSeconds:0.####}", $"kind{kind}");
    }
}
