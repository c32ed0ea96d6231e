using System.Net.WebSockets;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Gateway;

/// <summary>The standing connection over which the platform tells what happens: one shard or more, each kept connected for as long as it is wanted.</summary>
/// <param name="ask">Where the gateway is and how many sessions may be begun.</param>
/// <param name="chance">Gives a number from 0 up to 1; called from several threads.</param>
internal sealed class Gateway(
    GatewayOptions options,
    Func<CancellationToken, Task<GatewayInfo>> ask,
    ISessionShelf shelf,
    TimeProvider clock,
    Func<double> chance,
    ILogger<Gateway> log,
    Func<Uri, CancellationToken, Task<WebSocket>>? dial = null) : IDisposable
{
    private readonly GatewayOptions options = options.Checked();
    private readonly CancellationTokenSource stopping = new();
    private readonly TaskCompletionSource stopped = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile bool keepSession = true;
    private volatile bool running;

    /// <summary>Runs until asked to stop; to be called once. A cancelled <paramref name="ct"/> is a stop that keeps the session.</summary>
    /// <param name="sink">With several shards it is called from several threads.</param>
    /// <exception cref="GatewayFatalException">The platform will not have us back until the operator has changed something.</exception>
    public async Task RunAsync(IEventSink sink, IMessageInterest interest, CancellationToken ct)
    {
        running = true;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct, stopping.Token);
        try
        {
            var info = await AdviceAsync(stop.Token).ConfigureAwait(false);
            var count = options.Shards ?? Math.Max(1, info.Shards);
            var gate = new IdentifyGate(info, ask, clock, log);
            var shards = Enumerable.Range(0, count).Select(n => RunShardAsync(
                new ShardSetting(n, count, options, options.Url ?? info.Url, dial ?? DialAsync, sink, interest, clock, chance, () => keepSession, log), gate, stop));
            await Task.WhenAll(shards).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
        }
        finally
        {
            stopped.TrySetResult();
        }
    }

    /// <summary>Closes and waits until it is closed, some two seconds at most.</summary>
    /// <param name="keepSession">True for a restart: the session stays, and what is missed will be told. False to go offline.</param>
    public async Task StopAsync(bool keepSession)
    {
        this.keepSession = keepSession;
        await stopping.CancelAsync().ConfigureAwait(false);
        if (running)
            await stopped.Task.ConfigureAwait(false);
    }

    public void Dispose() => stopping.Dispose();

    private static async Task<WebSocket> DialAsync(Uri url, CancellationToken ct)
    {
        var socket = new ClientWebSocket();
        try
        {
            await socket.ConnectAsync(url, ct).ConfigureAwait(false);
            return socket;
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    private async Task RunShardAsync(ShardSetting setting, IdentifyGate gate, CancellationTokenSource stop)
    {
        try
        {
            await new Shard(setting, gate, shelf).RunAsync(stop.Token).ConfigureAwait(false);
        }
        catch
        {
            await stop.CancelAsync().ConfigureAwait(false); // What one shard is refused for, the others will be too.
            throw;
        }
    }

    private async Task<GatewayInfo> AdviceAsync(CancellationToken ct)
    {
        for (var failures = 0; ; failures++)
            try
            {
                return await ask(ct).ConfigureAwait(false);
            }
            catch (DiscordException e) when (e.Trouble == Trouble.Token)
            {
                var advice = CloseCodes.Advice(CloseCodes.BadToken);
                log.Fatal(0, (int)e.Status, advice);
                throw new GatewayFatalException(0, advice, e);
            }
            catch (DiscordException e)
            {
                var wait = Backoff.Wait(failures, chance());
                log.NoAdvice(e.Trouble.ToString(), wait);
                await Task.Delay(wait, clock, ct).ConfigureAwait(false);
            }
    }
}
