using System.Net;
using Polly;
using Polly.Retry;

namespace ShedBot.Discord.Rest;

/// <summary>When a request is sent again after it failed, and after which pause.</summary>
internal static class Retries
{
    private const int Most = 3;

    private static readonly TimeSpan First = TimeSpan.FromSeconds(0.5), Longest = TimeSpan.FromSeconds(8);

    /// <param name="chance">From 0 up to but not 1: spreads the pauses, so that many bots do not come back at once.</param>
    public static ResiliencePipeline<Answer> For(Repeat repeat, TimeProvider time, Func<double> chance) =>
        new ResiliencePipelineBuilder<Answer> { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions<Answer>
            {
                MaxRetryAttempts = repeat == Repeat.Once ? 1 : Most,
                Delay = repeat == Repeat.Once ? TimeSpan.Zero : First,
                MaxDelay = Longest,
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                Randomizer = chance,
                ShouldHandle = tried => ValueTask.FromResult(MayRepeat(repeat, tried.Outcome)),
            })
            .Build();

    public static bool IsLost(Exception e) => e is HttpRequestException or IOException or TimeoutException;

    private static bool MayRepeat(Repeat repeat, Outcome<Answer> outcome) => repeat switch
    {
        Repeat.Safe => outcome.Exception is { } e ? IsLost(e) : outcome.Result?.Status >= HttpStatusCode.InternalServerError,
        Repeat.Once => outcome.Exception is HttpRequestException or IOException,
        _ => outcome.Exception is HttpRequestException
        {
            HttpRequestError: HttpRequestError.NameResolutionError or HttpRequestError.ConnectionError or HttpRequestError.SecureConnectionError,
        },
    };
}
