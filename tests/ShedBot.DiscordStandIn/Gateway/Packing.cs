using System.Buffers.Binary;
using System.IO.Compression;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>One connection's way from JSON to frames: plain text, or one compressed stream with a sync flush per message.</summary>
internal sealed class Packing : IDisposable
{
    private readonly MemoryStream squeezed = new();
    private readonly ZLibStream? deflate;

    public Packing(bool zlib) => deflate = zlib ? new ZLibStream(squeezed, CompressionLevel.Fastest, leaveOpen: true) : null;

    public bool Zlib => deflate is not null;

    public byte[] Payload(byte[] json)
    {
        if (deflate is null)
            return json;
        squeezed.SetLength(0);
        deflate.Write(json);
        // A flush ends the block with 00 00 FF FF, which is how the other side knows a message is complete.
        deflate.Flush();
        return squeezed.ToArray();
    }

    /// <summary>Appends one whole server frame (RFC 6455, section 5.2: final, unmasked).</summary>
    public void AppendFrame(Stream to, byte[] json)
    {
        var payload = Payload(json);
        to.Write(Head(payload.Length));
        to.Write(payload);
    }

    /// <summary>The head of a frame that promises so many bytes.</summary>
    public byte[] Head(int length)
    {
        var kind = (byte)(Zlib ? 0x82 : 0x81);
        if (length < 126)
            return [kind, (byte)length];
        var head = new byte[length <= ushort.MaxValue ? 4 : 10];
        head[0] = kind;
        head[1] = (byte)(head.Length == 4 ? 126 : 127);
        if (head.Length == 4)
            BinaryPrimitives.WriteUInt16BigEndian(head.AsSpan(2), (ushort)length);
        else
            BinaryPrimitives.WriteInt64BigEndian(head.AsSpan(2), length);
        return head;
    }

    public void Dispose()
    {
        deflate?.Dispose();
        squeezed.Dispose();
    }
}
