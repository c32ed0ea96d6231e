using System.IO.Compression;

namespace ShedBot.Discord.Gateway;

/// <summary>Unpacks the one compressed stream of a connection, frame by frame: a frame is whole when its bytes end with the mark of a flush.</summary>
internal sealed class Inflater : IDisposable
{
    private readonly Feed feed = new();
    private readonly PooledBuffer output = new();
    private readonly ZLibStream stream;

    public Inflater() => stream = new ZLibStream(feed, CompressionMode.Decompress);

    public static bool IsWhole(ReadOnlySpan<byte> packed) => packed.EndsWith<byte>([0x00, 0x00, 0xFF, 0xFF]);

    /// <returns>Good until the next call.</returns>
    /// <exception cref="InvalidDataException">It is not what such a stream looks like, or too large.</exception>
    public ReadOnlyMemory<byte> Inflate(ReadOnlyMemory<byte> packed)
    {
        output.Clear();
        feed.Refill(packed);
        int count;
        while ((count = stream.Read(output.Free().Span)) > 0)
            output.Added(count);
        return output.Filled;
    }

    public void Dispose()
    {
        stream.Dispose();
        output.Dispose();
    }

    /// <summary>A stream that ends for now, and goes on when it is filled again.</summary>
    private sealed class Feed : Stream
    {
        private ReadOnlyMemory<byte> rest;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public void Refill(ReadOnlyMemory<byte> bytes) => rest = bytes;

        public override int Read(Span<byte> buffer)
        {
            var count = Math.Min(buffer.Length, rest.Length);
            rest.Span[..count].CopyTo(buffer);
            rest = rest[count..];
            return count;
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
