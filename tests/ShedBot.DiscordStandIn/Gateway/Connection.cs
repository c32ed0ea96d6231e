using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Threading.Channels;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>One socket of a client: a reader, a writer with a queue, and what was seen on it.</summary>
internal sealed class Connection : IDisposable
{
    private static readonly TimeSpan HalfIsRead = TimeSpan.FromMilliseconds(50);
    private readonly WebSocket socket;
    private readonly Stream raw;
    private readonly Action cut;
    private readonly Channel<Outgoing> outbox = System.Threading.Channels.Channel.CreateUnbounded<Outgoing>(new() { SingleReader = true });

    public Connection(WebSocket socket, Stream raw, Action cut, bool zlib, ConnectionReport report)
    {
        this.socket = socket;
        this.raw = raw;
        this.cut = cut;
        Packing = new Packing(zlib);
        Report = report;
    }

    public ConnectionReport Report { get; }

    public Packing Packing { get; }

    public Session? Session { get; set; }

    /// <summary>Whether a second identify on this socket is one too many.</summary>
    public bool Identified { get; set; }

    public DateTimeOffset LastBeat { get; set; }

    public Queue<DateTimeOffset> Sends { get; } = [];

    public void Send(byte[] json) => outbox.Writer.TryWrite(new Outgoing.Text(json));

    public void Send(string json) => Send(Encoding.UTF8.GetBytes(json));

    public void Do(Outgoing outgoing) => outbox.Writer.TryWrite(outgoing);

    public void Close(int code, string why)
    {
        Report.ClosedByUs = code;
        outbox.Writer.TryWrite(new Outgoing.Close(code, why));
    }

    /// <summary>Runs until the link ends, whoever ends it. The frame handler sees each whole message of the client.</summary>
    public async Task RunAsync(Action<string> onText, CancellationToken stopping)
    {
        var writing = WriteAsync(stopping);
        try
        {
            await ReadAsync(onText, stopping).ConfigureAwait(false);
        }
        catch (Exception e) when (e is WebSocketException or IOException or OperationCanceledException or ObjectDisposedException or InvalidOperationException)
        {
            // A link that ends is the everyday case here; the report says how it ended.
        }
        finally
        {
            outbox.Writer.TryComplete();
            await writing.ConfigureAwait(false);
        }
    }

    public void Dispose()
    {
        socket.Dispose();
        Packing.Dispose();
    }

    private async Task ReadAsync(Action<string> onText, CancellationToken stopping)
    {
        var buffer = new byte[16 * 1024];
        using var whole = new MemoryStream();
        while (true)
        {
            var got = await socket.ReceiveAsync(buffer.AsMemory(), stopping).ConfigureAwait(false);
            if (got.MessageType == WebSocketMessageType.Close)
            {
                Report.ClosedByClient = (int?)socket.CloseStatus ?? 1005;
                if (socket.State == WebSocketState.CloseReceived)
                    outbox.Writer.TryWrite(new Outgoing.Close((int)(socket.CloseStatus ?? WebSocketCloseStatus.NormalClosure), ""));
                return;
            }
            await whole.WriteAsync(buffer.AsMemory(0, got.Count), stopping).ConfigureAwait(false);
            if (!got.EndOfMessage)
                continue;
            onText(Encoding.UTF8.GetString(whole.GetBuffer(), 0, (int)whole.Length));
            whole.SetLength(0);
        }
    }

    private async Task WriteAsync(CancellationToken stopping)
    {
        try
        {
            await foreach (var next in outbox.Reader.ReadAllAsync(stopping).ConfigureAwait(false))
            {
                if (!await WriteAsync(next, stopping).ConfigureAwait(false))
                    break;
            }
        }
        catch (Exception e) when (e is WebSocketException or IOException or OperationCanceledException or ObjectDisposedException or InvalidOperationException)
        {
            cut();
        }
    }

    private async Task<bool> WriteAsync(Outgoing next, CancellationToken stopping)
    {
        switch (next)
        {
            case Outgoing.Text text:
                var kind = Packing.Zlib ? WebSocketMessageType.Binary : WebSocketMessageType.Text;
                await socket.SendAsync(Packing.Payload(text.Json), kind, endOfMessage: true, stopping).ConfigureAwait(false);
                return true;
            case Outgoing.Many many:
                using (var frames = new MemoryStream())
                {
                    many.Encode(Packing, frames);
                    many.Starting.TrySetResult((Stopwatch.GetTimestamp(), frames.Length));
                    await raw.WriteAsync(frames.GetBuffer().AsMemory(0, (int)frames.Length), stopping).ConfigureAwait(false);
                    await raw.FlushAsync(stopping).ConfigureAwait(false);
                }
                return true;
            case Outgoing.HalfThenDrop half:
                var payload = Packing.Payload(half.Json);
                await raw.WriteAsync(Packing.Head(payload.Length), stopping).ConfigureAwait(false);
                await raw.WriteAsync(payload.AsMemory(0, payload.Length / 2), stopping).ConfigureAwait(false);
                await raw.FlushAsync(stopping).ConfigureAwait(false);
                // Cut at once, the half might be thrown away with the link before the other side has read it.
                await Task.Delay(HalfIsRead, stopping).ConfigureAwait(false);
                cut();
                return false;
            case Outgoing.Close close:
                await socket.CloseOutputAsync((WebSocketCloseStatus)close.Code, close.Why, stopping).ConfigureAwait(false);
                return false;
            default:
                cut();
                return false;
        }
    }
}
