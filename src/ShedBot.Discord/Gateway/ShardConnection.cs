using System.Net.WebSockets;
using System.Text.Json;

namespace ShedBot.Discord.Gateway;

/// <summary>How a connection ended, and what follows.</summary>
/// <param name="Reason">A word for counting.</param>
/// <param name="Code">The platform's close code, if it gave one.</param>
/// <param name="Pause">Wait at least so long.</param>
/// <param name="AtOnce">The platform asked us to come back straight away.</param>
internal sealed record Ending(Next Next, string Reason, int? Code = null, TimeSpan Pause = default, bool AtOnce = false);

/// <summary>One connection, from dialling to its end: hello, begin or resume a session, then read.</summary>
internal sealed class ShardConnection
{
    private static readonly TimeSpan DialWithin = TimeSpan.FromSeconds(15), CloseWithin = TimeSpan.FromSeconds(2);

    private readonly ShardSetting my;
    private readonly Dispatcher dispatcher;
    private readonly Action identified;
    private readonly GatewayWriter writer;
    private readonly Heart heart;

    /// <param name="identified">Called when a new session has been asked for.</param>
    public ShardConnection(ShardSetting my, Dispatcher dispatcher, Action identified)
    {
        this.my = my;
        this.dispatcher = dispatcher;
        this.identified = identified;
        writer = new GatewayWriter(my.Clock, my.Log);
        heart = new Heart(my.Clock, my.Chance, needed =>
            writer.Send(Ops.Heartbeat, Payloads.Heartbeat(dispatcher.Session?.Progress.Last), needed));
    }

    /// <summary>The other side has said hello.</summary>
    public bool Greeted => heart.Greeted;

    /// <param name="ct">Ends the connection politely.</param>
    /// <returns>Never throws for what the network or the platform does.</returns>
    public async Task<Ending> RunAsync(Uri url, CancellationToken ct)
    {
        dispatcher.Connecting();
        WebSocket socket;
        using (var limit = new CancellationTokenSource(DialWithin, my.Clock))
        using (var both = CancellationTokenSource.CreateLinkedTokenSource(ct, limit.Token))
            try
            {
                socket = await my.Dial(Payloads.Address(url, my.Options.Compress), both.Token).ConfigureAwait(false);
            }
            catch (Exception) when (ct.IsCancellationRequested)
            {
                return new Ending(Next.Stop, "stop");
            }
            catch (Exception e) when (e is WebSocketException or OperationCanceledException or HttpRequestException or IOException)
            {
                return new Ending(Next.Resume, "unreachable");
            }
        using (socket)
            return await LiveAsync(socket, ct).ConfigureAwait(false);
    }

    private async Task<Ending> LiveAsync(WebSocket socket, CancellationToken ct)
    {
        using var life = new CancellationTokenSource();
        var stop = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var stopping = ct.UnsafeRegister(static s => ((TaskCompletionSource)s!).TrySetResult(), stop);
        var reading = ReadAsync(socket);
        var beating = heart.RunAsync(life.Token);
        var writing = writer.RunAsync(socket, life.Token);

        await Task.WhenAny(reading, beating, writing, stop.Task).ConfigureAwait(false);
        dispatcher.Shut();
        var ending = stop.Task.IsCompleted ? new Ending(Next.Stop, "stop")
            : reading.IsCompleted ? await reading.ConfigureAwait(false)
            : beating.IsCompleted ? new Ending(Next.Resume, await beating.ConfigureAwait(false))
            : null;
        var code = ending?.Next == Next.Stop && !my.KeepSession() ? CloseCodes.EndSession : CloseCodes.KeepSession;
        await CloseAsync(socket, code, reading).ConfigureAwait(false);
        await life.CancelAsync().ConfigureAwait(false);
        await Task.WhenAll(beating, writing).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        // When it was the sending that failed, the reader may have been told why.
        var told = await reading.ConfigureAwait(false);
        return ending ?? told;
    }

    /// <summary>Says goodbye and waits for the answer, two seconds at most: a dead link answers nothing, and may not even take the word.</summary>
    private async Task CloseAsync(WebSocket socket, int code, Task reading)
    {
        using var limit = new CancellationTokenSource(CloseWithin, my.Clock);
        try
        {
            if (socket.State is WebSocketState.Open or WebSocketState.CloseReceived)
                await socket.CloseOutputAsync((WebSocketCloseStatus)code, null, limit.Token).WaitAsync(limit.Token).ConfigureAwait(false);
            await reading.WaitAsync(limit.Token).ConfigureAwait(false);
            var rest = new byte[1024];
            while (socket.State == WebSocketState.CloseSent)
                await socket.ReceiveAsync(rest.AsMemory(), limit.Token).ConfigureAwait(false);
        }
        catch (Exception e) when (e is WebSocketException or OperationCanceledException or IOException or ObjectDisposedException or InvalidOperationException)
        {
            // The link is dead; aborting is all that is left.
        }
        socket.Abort();
    }

    private async Task<Ending> ReadAsync(WebSocket socket)
    {
        using var frames = new FrameReader(socket, my.Options.Compress);
        try
        {
            while (await frames.NextAsync().ConfigureAwait(false))
                if (Handle(frames.Frame.Span) is { } ending)
                    return ending;
            var code = (int?)socket.CloseStatus;
            if (CloseCodes.IsOurMistake(code))
                my.Log.OurMistake(my.Shard, code);
            return new Ending(CloseCodes.Meaning(code), code is { } c ? $"code-{c}" : "closed", code, CloseCodes.Pause(code));
        }
        catch (InvalidDataException)
        {
            my.Log.BrokenFrame(my.Shard, frames.Frame.Length);
            return new Ending(Next.Resume, "broken-frame");
        }
        catch (Exception e) when (e is WebSocketException or OperationCanceledException or IOException or ObjectDisposedException or InvalidOperationException)
        {
            return new Ending(Next.Resume, "link-lost");
        }
        catch (Exception e) // A mistake of ours costs one connection, not the bot.
        {
            my.Log.ReadingFailed(e, my.Shard);
            return new Ending(Next.Resume, "failed");
        }
    }

    /// <returns>Null to go on reading.</returns>
    private Ending? Handle(ReadOnlySpan<byte> frame)
    {
        try
        {
            var envelope = Envelope.Read(frame, dispatcher.Me);
            switch (envelope.Op)
            {
                case Ops.Dispatch:
                    dispatcher.Take(envelope);
                    return null;
                case Ops.HeartbeatAck:
                    heart.Acknowledge();
                    return null;
                case Ops.Heartbeat:
                    heart.Answer();
                    return null;
                case Ops.Hello:
                    return Greet(envelope.Data);
                case Ops.Reconnect:
                    return new Ending(Next.Resume, "asked", AtOnce: true);
                case Ops.InvalidSession:
                    var pause = TimeSpan.FromSeconds(1 + (4 * my.Chance()));
                    return envelope.Data.SequenceEqual("true"u8)
                        ? new Ending(Next.Resume, "session-refused", Pause: pause)
                        : new Ending(Next.Identify, "session-dead", Pause: pause);
                default:
                    my.Log.UnknownOp(my.Shard, envelope.Op);
                    return null;
            }
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            my.Log.BrokenFrame(my.Shard, frame.Length);
            return new Ending(Next.Resume, "broken-frame");
        }
    }

    private Ending? Greet(ReadOnlySpan<byte> data)
    {
        var first = !heart.Greeted;
        if (!heart.Hello(JsonSerializer.Deserialize(data, GatewayJson.Default.HelloData)?.HeartbeatInterval))
            return new Ending(Next.Resume, "bad-hello");
        if (!first)
            return null; // A second sign-in on one connection is not allowed.
        if (dispatcher.Session is { } session)
            writer.Send(Ops.Resume, Payloads.Resume(my.Options.Token, session.Id, session.Progress.Last), needed: true);
        else
        {
            writer.Send(Ops.Identify, Payloads.Identify(my.Options, my.Shard, my.Shards), needed: true);
            identified();
        }
        GatewayMetrics.Started(dispatcher.Session is not null);
        return null;
    }
}
