using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using System.Text;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>A request as it came to the other side.</summary>
internal sealed record Seen(string Method, string Path, string? Authorization, string? MediaType, byte[] Body, DateTimeOffset At)
{
    public string Text => Encoding.UTF8.GetString(Body);

    public override string ToString() => $"{Method} {Path}";
}

/// <summary>Our REST half with a platform that says what the test wants, and a clock that the test moves.</summary>
internal sealed class RestWorld : IDisposable
{
    /// <summary>Made up; of the look of a real one.</summary>
    public const string Secret = "MTAwMDAwMDAwMDAwMDAwMDAw.made-up.secret-of-the-test";

    /// <summary>Made up as well.</summary>
    public const string InteractionToken = "aW50ZXJhY3Rpb246bWFkZS11cA";

    public static readonly Snowflake Room = new(2001), Other = new(2002), Club = new(3001), Rider = new(4001), App = new(5001), Words = new(6001);

    private readonly HttpClient http;
    private readonly Meter meter = new(RestMeters.MeterName);
    private readonly MeterListener listener = new();
    private readonly ConcurrentQueue<Seen> seen = new();

    public RestWorld(Func<Seen, HttpResponseMessage> platform, Func<RestOptions, RestOptions>? change = null)
        : this(s => Task.FromResult(platform(s)), change)
    {
    }

    public RestWorld(Func<Seen, Task<HttpResponseMessage>> platform, Func<RestOptions, RestOptions>? change = null)
    {
        // Without a context everything runs on the thread that caused it, up to the next wait for the clock.
        SynchronizationContext.SetSynchronizationContext(null);
        var options = new RestOptions(new Uri("https://club.invalid/shedbot"), "1.2.3") { BaseAddress = new Uri("https://platform.invalid/api/v10/") };
        options = change?.Invoke(options) ?? options;
        http = RestClient.Create(options, new Platform(this, platform));
        listener.InstrumentPublished = (instrument, l) =>
        {
            if (instrument.Meter == meter)
                l.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<long>((i, value, tags, _) => Measured.Enqueue((i.Name, value, Text(tags))));
        listener.SetMeasurementEventCallback<double>((i, value, tags, _) => Measured.Enqueue((i.Name, value, Text(tags))));
        listener.Start();
        Rest = new DiscordRest(http, new BotToken(Secret), options, Time, () => 0.5, meter, Log);
        Rest.TokenRefused += () => TokenRefusals++;
    }

    public TestTime Time { get; } = new();

    public DiscordRest Rest { get; }

    public Captured Log { get; } = new();

    public int TokenRefusals { get; private set; }

    public ConcurrentQueue<(string Instrument, double Value, string Tags)> Measured { get; } = new();

    public IReadOnlyList<Seen> Requests => [.. seen];

    private int Stirred => seen.Count + Time.Made;

    /// <summary>A call, and its time from beginning to end. The clock jumps to whatever is waited for, so one call at a time.</summary>
    public async Task<(T? Result, DiscordException? Refused, TimeSpan Took)> RunAsync<T>(Func<IDiscordRest, Task<T>> call)
    {
        var began = Time.GetUtcNow();
        var running = call(Rest);
        while (!running.IsCompleted && Time.Next is { } next)
        {
            Time.Advance(next - Time.GetUtcNow());
            await Task.Yield();
        }

        try
        {
            return (await running, null, Time.GetUtcNow() - began);
        }
        catch (DiscordException e)
        {
            return (default, e, Time.GetUtcNow() - began);
        }
    }

    /// <summary>Lets any number of calls run beside each other, the clock in small steps. What is seen too late proves nothing; too early does.</summary>
    public async Task FinishAsync(params IEnumerable<Task> calls)
    {
        var all = Task.WhenAll(calls);
        for (var step = 0; !all.IsCompleted; step++)
        {
            Assert.True(step < 1_000_000, "The calls never came to an end.");
            await SettleAsync();
            Time.Advance(TimeSpan.FromMilliseconds(10));
        }

        await all;
    }

    public Interaction Interaction() => new(Snowflake.First(Time.GetUtcNow()), App, InteractionTypes.Component, InteractionToken);

    public void Dispose()
    {
        listener.Dispose();
        meter.Dispose();
        http.Dispose();
    }

    /// <summary>Lets everything that can go on without the clock go on, as far as can be told from outside.</summary>
    private async Task SettleAsync()
    {
        for (var (quiet, before) = (0, -1); quiet < 3; quiet = before == Stirred ? quiet + 1 : 0)
        {
            before = Stirred;
            await Task.Run(static () => { });
        }
    }

    private static string Text(ReadOnlySpan<KeyValuePair<string, object?>> tags)
    {
        var words = new List<string>();
        foreach (var tag in tags)
            words.Add($"{tag.Key}={tag.Value}");
        return string.Join(' ', words);
    }

    /// <summary>Everything that was logged, as a sink would write it.</summary>
    internal sealed class Captured : ILogger<DiscordRest>
    {
        public ConcurrentQueue<(LogLevel Level, string Text)> Lines { get; } = new();

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Enqueue((logLevel, $"{formatter(state, exception)} {exception} {string.Join(' ', state as IEnumerable<KeyValuePair<string, object?>> ?? [])}"));
    }

    private sealed class Platform(RestWorld world, Func<Seen, Task<HttpResponseMessage>> answer) : HttpMessageHandler
    {
        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var body = request.Content is { } content ? await content.ReadAsByteArrayAsync(cancellationToken) : [];
            var came = new Seen(
                request.Method.Method,
                request.RequestUri!.PathAndQuery,
                request.Headers.Authorization?.ToString(),
                request.Content?.Headers.ContentType?.ToString(),
                body,
                world.Time.GetUtcNow());
            world.seen.Enqueue(came);
            return await answer(came).WaitAsync(cancellationToken);
        }
    }
}

internal static class Answers
{
    public static HttpResponseMessage Json(HttpStatusCode status, string json) =>
        new(status) { Content = new StringContent(json, Encoding.UTF8, "application/json") };

    public static HttpResponseMessage Ok(string json = """{"id":"1"}""") => Json(HttpStatusCode.OK, json);

    public static HttpResponseMessage Refusal(int status, int code, string message = "made up") =>
        Json((HttpStatusCode)status, $$"""{"code":{{code}},"message":"{{message}}"}""");

    /// <summary>Headers as in the description, topics/rate-limits, "Header Format".</summary>
    public static HttpResponseMessage WithLimit(this HttpResponseMessage answer, int limit, int remaining, string resetAfter, string bucket = "abcd1234") => answer
        .With("X-RateLimit-Limit", $"{limit}")
        .With("X-RateLimit-Remaining", $"{remaining}")
        .With("X-RateLimit-Reset", "1470173023.123")
        .With("X-RateLimit-Reset-After", resetAfter)
        .With("X-RateLimit-Bucket", bucket);

    public static HttpResponseMessage With(this HttpResponseMessage answer, string name, string value)
    {
        answer.Headers.TryAddWithoutValidation(name, value);
        return answer;
    }

    /// <summary>A 429 as in the description, topics/rate-limits, "Exceeding A Rate Limit".</summary>
    public static HttpResponseMessage TooMany(string scope, string retryAfter, bool global = false) =>
        Json(HttpStatusCode.TooManyRequests, $$"""{"message":"You are being rate limited.","retry_after":{{retryAfter}},"global":{{(global ? "true" : "false")}}}""")
            .With("X-RateLimit-Scope", scope)
            .With("Retry-After", "65");
}
