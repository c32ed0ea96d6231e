using System.Text.Json;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

internal static class Ops
{
    public const int Dispatch = 0, Heartbeat = 1, Identify = 2, Resume = 6, Reconnect = 7, InvalidSession = 9, Hello = 10, HeartbeatAck = 11;
}

/// <summary>The outside of one frame, read without making anything of the inside.</summary>
internal readonly ref struct Envelope
{
    private Envelope(int op, EventKind kind, long? sequence, ReadOnlySpan<byte> data, MessagePeek peek)
    {
        Message = peek;
        Op = op;
        Kind = kind;
        Sequence = sequence;
        Data = data;
    }

    /// <summary>-1 when there is none.</summary>
    public int Op { get; }

    public EventKind Kind { get; }

    public long? Sequence { get; }

    /// <summary>The JSON of the inside; empty when there is none.</summary>
    public ReadOnlySpan<byte> Data { get; }

    /// <summary>Of a MESSAGE_CREATE; without ids when there are none. Read in the same pass, for most frames are messages that nobody asked about.</summary>
    public MessagePeek Message { get; }

    /// <param name="me">Our own id, where it is known.</param>
    /// <exception cref="JsonException">It is not one whole JSON value.</exception>
    public static Envelope Read(ReadOnlySpan<byte> frame, Snowflake me)
    {
        var reader = new Utf8JsonReader(frame);
        int op = -1;
        var kind = EventKind.None;
        long? sequence = null;
        ReadOnlySpan<byte> data = default;
        MessagePeek? peek = null;
        reader.Read();
        if (reader.TokenType != JsonTokenType.StartObject)
            reader.Skip();
        else
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                if (reader.ValueTextEquals("d"u8))
                {
                    reader.Read();
                    var start = (int)reader.TokenStartIndex;
                    if (kind == EventKind.MessageCreate)
                        peek = Peek.Here(ref reader, me);
                    else
                        reader.Skip();
                    data = frame[start..(int)reader.BytesConsumed];
                }
                else if (reader.ValueTextEquals("t"u8))
                {
                    reader.Read();
                    kind = reader.TokenType == JsonTokenType.String ? EventKinds.Of(ref reader) : EventKind.None;
                    reader.Skip();
                }
                else if (reader.ValueTextEquals("s"u8))
                {
                    reader.Read();
                    sequence = reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out var s) ? s : null;
                    reader.Skip();
                }
                else if (reader.ValueTextEquals("op"u8))
                {
                    reader.Read();
                    op = reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var o) ? o : -1;
                    reader.Skip();
                }
                else
                {
                    reader.Read();
                    reader.Skip();
                }
            }
        while (reader.Read()) // Only blanks may follow: anything else throws.
        {
        }
        // The name may come after the inside.
        if (kind == EventKind.MessageCreate && peek is null && !data.IsEmpty)
            peek = Peek.Read(data, me);
        return new Envelope(op, kind, sequence, data, peek ?? default);
    }
}
