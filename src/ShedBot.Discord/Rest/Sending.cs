using System.Net;
using Microsoft.Extensions.Logging;
using Polly;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Rest;

/// <summary>Takes a request through the limits to the platform, as often as is right, and an answer or a <see cref="DiscordException"/> back.</summary>
internal sealed class Sending
{
    private readonly HttpClient http;
    private readonly BotToken token;
    private readonly RestOptions options;
    private readonly TimeProvider time;
    private readonly RestMeters meters;
    private readonly ILogger log;
    private readonly Ticker ticker;
    private readonly Buckets buckets;
    private readonly GlobalGate gate;
    private readonly Brake brake;
    private readonly Dictionary<Repeat, ResiliencePipeline<Answer>> retries;

    public Sending(HttpClient http, BotToken token, RestOptions options, TimeProvider time, Func<double> chance, RestMeters meters, ILogger log)
    {
        (this.http, this.token, this.options, this.time, this.meters, this.log) = (http, token, options, time, meters, log);
        ticker = new Ticker(time);
        buckets = new Buckets(ticker);
        gate = new GlobalGate(ticker, options.PerSecond);
        brake = new Brake(ticker, options.WarnAt, options.StopAt);
        retries = Enum.GetValues<Repeat>().ToDictionary(r => r, r => Retries.For(r, time, chance));
    }

    /// <summary>The bot's token is not taken: raised once.</summary>
    public event Action? TokenRefused;

    /// <returns>A good answer.</returns>
    public async Task<Answer> SendAsync(Outgoing outgoing, CancellationToken ct)
    {
        var route = outgoing.Route;
        var deadline = ticker.Now + outgoing.Patience;
        StopIfBraked(route);
        StopIfLate(route, buckets.FreeAt(route) - ticker.Now, deadline);
        using var late = new CancellationTokenSource(outgoing.Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, late.Token);
        try
        {
            var began = ticker.Now;
            using var turn = await buckets.EnterAsync(route, either.Token);
            Waited(route, ticker.Now - began);
            var tries = 0;
            var answer = await retries[outgoing.Repeat].ExecuteAsync(
                async stop =>
                {
                    if (tries++ > 0)
                    {
                        meters.Retried(route);
                        log.Again(route.Name, "a failure");
                    }

                    return await TryAsync(outgoing, turn, deadline, stop);
                },
                either.Token);
            return answer.Good ? answer : throw Refused(route, answer);
        }
        catch (OperationCanceledException e) when (!ct.IsCancellationRequested)
        {
            throw Lost(route, "it took too long", e);
        }
        catch (Exception e) when (Retries.IsLost(e))
        {
            throw Lost(route, e is TimeoutException ? "no answer came in time" : "the connection failed", e);
        }
    }

    /// <summary>One try, and again as often as the platform says to wait.</summary>
    private async Task<Answer> TryAsync(Outgoing outgoing, Buckets.Turn turn, TimeSpan deadline, CancellationToken ct)
    {
        var route = outgoing.Route;
        for (var repeats = 0; ; repeats++)
        {
            var began = ticker.Now;
            await turn.SettleAsync(ct);
            while (turn.FreeAt - ticker.Now is { Ticks: > 0 } wait)
            {
                StopIfLate(route, wait, deadline);
                await ticker.WaitAsync(wait, ct);
            }

            using var pass = route.OfInteraction ? null : await gate.EnterAsync(wait => StopIfLate(route, wait, deadline), ct);
            Waited(route, ticker.Now - began);
            StopIfBraked(route);
            turn.Sent();
            var answer = await ExchangeAsync(outgoing, ct);
            pass?.Answered = true;
            turn.Heard(RateHeaders.Read(answer.Headers));
            if (answer.Status != HttpStatusCode.TooManyRequests || !WaitsFor(route, answer, turn) || repeats == options.LimitedRepeats)
                return answer;
        }
    }

    /// <summary>Sees to it that nobody goes on before a 429 allows it.</summary>
    /// <returns>False when waiting does not help.</returns>
    private bool WaitsFor(Route route, Answer answer, Buckets.Turn turn)
    {
        var refusal = Refusal.Read(answer.Body);
        var scope = RateHeaders.Scope(answer.Headers, refusal);
        var wait = RateHeaders.Wait(answer.Headers, refusal);
        meters.Limited(route, scope);
        log.Limited(route.Name, wait.TotalSeconds, scope);
        if (scope != LimitScope.Shared)
            CountInvalid();
        if (scope == LimitScope.Global && !route.OfInteraction)
            gate.Pause(wait);
        else
            turn.Pause(wait);
        return Refusal.Judge(answer.Status, refusal.Code, route.OfInteraction) == Trouble.Busy;
    }

    private async Task<Answer> ExchangeAsync(Outgoing outgoing, CancellationToken ct)
    {
        using var slow = new CancellationTokenSource(outgoing.Try, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, slow.Token);
        using var request = outgoing.Write(token);
        var status = 0;
        try
        {
            using var response = await http.SendAsync(request, HttpCompletionOption.ResponseContentRead, either.Token);
            status = (int)response.StatusCode;
            return new Answer(response.StatusCode, response.Headers, await response.Content.ReadAsByteArrayAsync(either.Token));
        }
        catch (OperationCanceledException e) when (!ct.IsCancellationRequested)
        {
            throw new TimeoutException("No answer came in time.", e);
        }
        finally
        {
            meters.Tried(outgoing.Route, status);
        }
    }

    private DiscordException Refused(Route route, Answer answer)
    {
        var refusal = Refusal.Read(answer.Body);
        var trouble = Refusal.Judge(answer.Status, refusal.Code, route.OfInteraction);
        log.Refused(route.Name, (int)answer.Status, refusal.Code, refusal.Paths);
        if (answer.Status is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden)
            CountInvalid();
        if (trouble == Trouble.Token && brake.RefuseToken())
        {
            log.TokenRefused();
            TokenRefused?.Invoke();
        }

        return new DiscordException(trouble, answer.Status, refusal.Code, route.Name, "The platform refused");
    }

    private DiscordException Lost(Route route, string why, Exception inner)
    {
        log.Unreached(route.Name, why);
        return new DiscordException(Trouble.Busy, 0, 0, route.Name, why, inner);
    }

    private void CountInvalid()
    {
        meters.Invalid();
        if (brake.Add() is { } count)
            log.ManyInvalid(count, options.StopAt);
    }

    private void StopIfBraked(Route route)
    {
        if (brake.TokenRefused)
            throw new DiscordException(Trouble.Token, 0, 0, route.Name, "The bot's token was refused before");
        if (!route.OfInteraction && brake.On)
            throw new DiscordException(Trouble.Busy, 0, 0, route.Name, "Too many requests were refused lately");
    }

    private void StopIfLate(Route route, TimeSpan wait, TimeSpan deadline)
    {
        if (ticker.Now + wait > deadline)
            throw new DiscordException(Trouble.Busy, 0, 0, route.Name, "The limits would keep it waiting too long");
    }

    private void Waited(Route route, TimeSpan wait)
    {
        if (wait > TimeSpan.Zero)
            meters.Waited(route, wait);
    }
}
