using System.IO.Compression;
using System.Text;
using CsCheck;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>However the bytes come, the same events come out, and whatever comes, the reader ends in order. Source: RFC 6455, 5.4 (fragmentation), and for the compressed
/// stream RFC 1950/1951 by way of the runtime's own compressor, with the end mark of the platform's description, "Gateway", transport compression.</summary>
public sealed class FrameTests
{
    private static readonly Gen<int[]> SomeSamples = Gen.Int[0, Samples.All.Length - 1].Array[1, 12];

    [Fact]
    public Task ReadAsync_AnyChunking_GivesTheSameEvents() =>
        Gen.Select(SomeSamples, Gen.Int[1, 900]).SampleAsync(
            async (samples, size) =>
            {
                var bench = new Bench();
                for (var i = 0; i < samples.Length; i++)
                    SayInPieces(bench.Socket, Encoding.UTF8.GetBytes(Samples.Frame(samples[i], i + 1)), size);
                await CheckAsync(bench, samples);
            },
            iter: 200);

    [Fact]
    public Task ReadAsync_OneCompressedStreamInAnyPieces_GivesTheSameEvents() =>
        Gen.Select(SomeSamples, Gen.Int[1, 900], Gen.Bool).SampleAsync(
            async (samples, size, asMessages) =>
            {
                var bench = new Bench(compress: true);
                using var packed = new MemoryStream();
                await using var packer = new ZLibStream(packed, CompressionLevel.Optimal);
                for (var i = 0; i < samples.Length; i++)
                {
                    packer.Write(Encoding.UTF8.GetBytes(Samples.Frame(samples[i], i + 1)));
                    packer.Flush();
                    SayInPieces(bench.Socket, packed.ToArray(), size, asMessages);
                    packed.SetLength(0);
                }
                await CheckAsync(bench, samples);
            },
            iter: 200);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task ReadAsync_AClubOfMegabytes_IsReadFromManyBuffers(bool compress)
    {
        var channels = string.Join(',', Enumerable.Range(1000, 16_000).Select(n => $$"""{"id":"{{n}}","type":0,"name":"a channel of many, with a long name, more words"}"""));
        var frame = Encoding.UTF8.GetBytes($$$"""{"t":"GUILD_CREATE","s":1,"op":0,"d":{"id":"70","channels":[{{{channels}}}]}}""");
        Assert.True(frame.Length > 1_000_000);
        var bench = new Bench(compress);
        using var packed = new MemoryStream();
        await using var packer = new ZLibStream(packed, CompressionLevel.Fastest);
        foreach (var whole in (byte[][])[frame, Encoding.UTF8.GetBytes(Samples.Frame(8, 2))])
        {
            packer.Write(whole);
            packer.Flush();
            SayInPieces(bench.Socket, compress ? packed.ToArray() : whole, 4096);
            packed.SetLength(0);
        }
        bench.Socket.CloseWith(4000);
        await bench.ReadAsync();
        Assert.Equal(16_000, Assert.IsType<GuildThere>(bench.Taken[0]).Guild.Channels!.Count);
        Assert.IsType<ThreadGone>(bench.Taken[1]);
    }

    [Fact]
    public async Task ReadAsync_CompressedRubbish_ClosesSoThatTheSessionStays()
    {
        var bench = new Bench(compress: true);
        bench.Socket.Say([0x78, 0x9C, 0xFF, 0xFE, 0x12, 0x00, 0x00, 0xFF, 0xFF]);
        var ending = await bench.ReadAsync();
        Assert.Equal((Next.Resume, "broken-frame"), (ending.Next, ending.Reason));
        Assert.Equal(4000, bench.Socket.LeftWith);
    }

    [Fact]
    public Task ReadAsync_AnyBytes_EndInOrder() =>
        Gen.Byte.Array[0, 200].SampleAsync(async bytes => await SurvivesAsync(bytes), iter: 2000);

    [Fact]
    public Task ReadAsync_FramesWithBytesChanged_EndInOrder() =>
        Gen.Select(Gen.Int[0, Samples.All.Length - 1], Gen.Select(Gen.Int[0, 5000], Gen.Byte).Array[1, 6], Gen.Int[0, 5000]).SampleAsync(
            async (sample, changes, cut) =>
            {
                var bytes = Encoding.UTF8.GetBytes(Samples.Frame(sample, 1));
                foreach (var (at, to) in changes)
                    bytes[at % bytes.Length] = to;
                await SurvivesAsync(cut % 3 == 0 ? bytes[..(cut % bytes.Length)] : bytes);
            },
            iter: 4000);

    private static async Task SurvivesAsync(byte[] bytes)
    {
        var bench = new Bench();
        bench.Socket.Hello();
        bench.Socket.Say(bytes);
        bench.Socket.Event("THREAD_DELETE", 9, """{"id":"81"}""");
        bench.Socket.CloseWith(4000);
        var ending = await bench.ReadAsync();
        // "failed" is what the reader says of an exception that nobody thought of.
        Assert.Contains(ending.Reason, (string[])["code-4000", "broken-frame", "asked", "session-dead", "session-refused", "bad-hello"]);
        if (ending.Reason == "code-4000")
            Assert.Contains(bench.Taken, t => t is ThreadGone { Thread.Value: 81 });
    }

    private static async Task CheckAsync(Bench bench, int[] samples)
    {
        bench.Socket.CloseWith(4000);
        Assert.Equal("code-4000", (await bench.ReadAsync()).Reason);
        var plain = new Bench();
        for (var i = 0; i < samples.Length; i++)
            plain.Dispatcher.Take(Envelope.Read(Encoding.UTF8.GetBytes(Samples.Frame(samples[i], i + 1)), plain.Dispatcher.Me));
        Assert.Equal(plain.Taken.Select(t => t.GetType()), bench.Taken.Select(t => t.GetType()));
        Assert.Equal(plain.Peeks, bench.Peeks);
        Assert.Equal(samples.Length, bench.Dispatcher.Session!.Progress.Safe);
    }

    private static void SayInPieces(ScriptedSocket socket, byte[] bytes, int size, bool asMessages = false)
    {
        for (var at = 0; at < bytes.Length; at += size)
            socket.Say(bytes[at..Math.Min(bytes.Length, at + size)], end: asMessages || at + size >= bytes.Length);
    }
}
