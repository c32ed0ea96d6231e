using System.Buffers;
using System.Net.WebSockets;
using System.Runtime.CompilerServices;

namespace ShedBot.Discord.Gateway;

/// <summary>Puts the pieces of a connection together into whole frames, in one buffer that grows with a big one and shrinks again.</summary>
internal sealed class FrameReader(WebSocket socket, bool compressed) : IDisposable
{
    /// <summary>The largest frame taken, in bytes: a club of many channels has a few million.</summary>
    public const int Largest = 32 * 1024 * 1024;

    private readonly Inflater? inflater = compressed ? new Inflater() : null;
    private readonly PooledBuffer buffer = new();

    /// <summary>The last frame; good until the next is asked for.</summary>
    public ReadOnlyMemory<byte> Frame { get; private set; }

    /// <returns>False when the other side has closed.</returns>
    /// <exception cref="WebSocketException">The link is lost.</exception>
    /// <exception cref="InvalidDataException">A frame too large, or not to be unpacked.</exception>
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<bool> NextAsync()
    {
        buffer.Clear();
        while (true)
        {
            // Not cancelled by a token: that would break the socket before we could say why we leave. It is ended by closing or aborting.
            var got = await socket.ReceiveAsync(buffer.Free(), CancellationToken.None).ConfigureAwait(false);
            if (got.MessageType == WebSocketMessageType.Close)
                return false;
            buffer.Added(got.Count);
            if (!got.EndOfMessage || (inflater is not null && !Inflater.IsWhole(buffer.Filled.Span)))
                continue;
            Frame = inflater is null ? buffer.Filled : inflater.Inflate(buffer.Filled);
            return true;
        }
    }

    public void Dispose()
    {
        inflater?.Dispose();
        buffer.Dispose();
    }
}

/// <summary>Bytes that are filled from the front.</summary>
internal sealed class PooledBuffer : IDisposable
{
    private const int Small = 16 * 1024, Big = 8 * Small;

    private byte[] bytes = ArrayPool<byte>.Shared.Rent(Small);
    private int length;

    public ReadOnlyMemory<byte> Filled => bytes.AsMemory(0, length);

    public void Clear()
    {
        length = 0;
        if (bytes.Length > Big)
            Replace(Small);
    }

    /// <summary>Room for at least one byte.</summary>
    /// <exception cref="InvalidDataException">It holds as much as may be.</exception>
    public Memory<byte> Free()
    {
        if (length == bytes.Length)
        {
            if (length >= FrameReader.Largest)
                throw new InvalidDataException("A frame is too large.");
            Replace(bytes.Length * 2);
        }
        return bytes.AsMemory(length);
    }

    public void Added(int count) => length += count;

    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(bytes);
        bytes = [];
        length = 0;
    }

    private void Replace(int size)
    {
        var fresh = ArrayPool<byte>.Shared.Rent(size);
        bytes.AsSpan(0, length).CopyTo(fresh);
        ArrayPool<byte>.Shared.Return(bytes);
        bytes = fresh;
    }
}
