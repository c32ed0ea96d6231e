using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;

namespace ShedBot.Discord.Tests.Gateway.Rig;

/// <summary>The other end of a connection, in memory: a test says what comes in, piece by piece, and sees what goes out.</summary>
internal sealed class ScriptedSocket(Uri url) : WebSocket
{
    private readonly Channel<Piece> incoming = Channel.CreateUnbounded<Piece>();
    private readonly List<JsonElement> heard = [];
    private readonly CancellationTokenSource aborted = new();
    private readonly Lock gate = new();
    private Piece? rest;
    private WebSocketState state = WebSocketState.Open;
    private WebSocketCloseStatus? told;

    private sealed record Piece(byte[] Bytes, WebSocketMessageType Type, bool End, Exception? Break = null);

    public Uri Url => url;

    /// <summary>Answers each beat.</summary>
    public bool Acknowledges { get; set; } = true;

    /// <summary>Takes nothing any more: whoever sends, waits.</summary>
    public bool Blocked { get; set; }

    /// <summary>Answers a goodbye with one.</summary>
    public bool AnswersClose { get; set; } = true;

    /// <summary>The code with which our side said goodbye.</summary>
    public int? LeftWith { get; private set; }

    public int BytesOfLongest { get; private set; }

    public bool IsAborted => aborted.IsCancellationRequested;

    public IReadOnlyList<JsonElement> Heard
    {
        get
        {
            lock (gate)
                return [.. heard];
        }
    }

    public override WebSocketCloseStatus? CloseStatus => told;

    public override string? CloseStatusDescription => null;

    public override WebSocketState State => state;

    public override string? SubProtocol => null;

    public void Say(string json) => Say(Encoding.UTF8.GetBytes(json));

    public void Say(byte[] bytes, bool end = true, WebSocketMessageType type = WebSocketMessageType.Text) => incoming.Writer.TryWrite(new Piece(bytes, type, end));

    public void Hello(int interval = 40_000) => Say($$$"""{"t":null,"s":null,"op":10,"d":{"heartbeat_interval":{{{interval}}},"_trace":["x"]}}""");

    public void Event(string name, long sequence, string data) => Say($$"""{"t":"{{name}}","s":{{sequence}},"op":0,"d":{{data}}}""");

    public void CloseWith(int code)
    {
        told = (WebSocketCloseStatus)code;
        incoming.Writer.TryWrite(new Piece([], WebSocketMessageType.Close, true));
    }

    /// <summary>The link is lost without a word.</summary>
    public void Drop() => incoming.Writer.TryWrite(new Piece([], default, true, new WebSocketException(WebSocketError.ConnectionClosedPrematurely)));

    public async Task<JsonElement> HearAsync(int op, int nth = 1)
    {
        await Wait.UntilAsync(() => Heard.Count(h => h.GetProperty("op").GetInt32() == op) >= nth, $"operation {op} was not sent {nth} times");
        return Heard.Where(h => h.GetProperty("op").GetInt32() == op).ElementAt(nth - 1).GetProperty("d");
    }

    public override async ValueTask<ValueWebSocketReceiveResult> ReceiveAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        if (aborted.IsCancellationRequested)
            throw new WebSocketException(WebSocketError.InvalidState);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(aborted.Token, cancellationToken);
        var piece = rest ?? await incoming.Reader.ReadAsync(both.Token);
        rest = null;
        if (piece.Break is not null)
        {
            state = WebSocketState.Aborted;
            throw piece.Break;
        }
        if (piece.Type == WebSocketMessageType.Close)
        {
            state = state == WebSocketState.CloseSent ? WebSocketState.Closed : WebSocketState.CloseReceived;
            return new ValueWebSocketReceiveResult(0, WebSocketMessageType.Close, true);
        }
        var count = Math.Min(buffer.Length, piece.Bytes.Length);
        piece.Bytes.AsMemory(0, count).CopyTo(buffer);
        if (count == piece.Bytes.Length)
            return new ValueWebSocketReceiveResult(count, piece.Type, piece.End);
        rest = piece with { Bytes = piece.Bytes[count..] };
        return new ValueWebSocketReceiveResult(count, piece.Type, false);
    }

    public override async ValueTask SendAsync(
        ReadOnlyMemory<byte> buffer, WebSocketMessageType messageType, bool endOfMessage, CancellationToken cancellationToken)
    {
        if (Blocked)
            await Task.Delay(Timeout.Infinite, aborted.Token);
        var frame = JsonDocument.Parse(buffer).RootElement;
        lock (gate)
        {
            heard.Add(frame);
            BytesOfLongest = Math.Max(BytesOfLongest, buffer.Length);
        }
        if (Acknowledges && frame.GetProperty("op").GetInt32() == 1)
            Say("""{"op":11}""");
    }

    public override async Task CloseOutputAsync(WebSocketCloseStatus closeStatus, string? statusDescription, CancellationToken cancellationToken)
    {
        if (Blocked)
            await Task.Delay(Timeout.Infinite, aborted.Token);
        LeftWith = (int)closeStatus;
        if (state == WebSocketState.CloseReceived)
            state = WebSocketState.Closed;
        else
        {
            state = WebSocketState.CloseSent;
            if (AnswersClose)
                CloseWith((int)closeStatus);
        }
    }

    public override void Abort()
    {
        state = WebSocketState.Aborted;
        aborted.Cancel();
    }

    public override void Dispose()
    {
    }

    public override Task CloseAsync(WebSocketCloseStatus closeStatus, string? statusDescription, CancellationToken cancellationToken) =>
        throw new InvalidOperationException("It can hang; it is not used.");

    public override Task<WebSocketReceiveResult> ReceiveAsync(ArraySegment<byte> buffer, CancellationToken cancellationToken) =>
        throw new InvalidOperationException("The other form is used.");

    public override Task SendAsync(ArraySegment<byte> buffer, WebSocketMessageType messageType, bool endOfMessage, CancellationToken cancellationToken) =>
        throw new InvalidOperationException("The other form is used.");
}
