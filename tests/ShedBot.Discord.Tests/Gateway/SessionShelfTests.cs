using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>A process that starts again goes on with the session and is told what was missed. Source: resuming in the platform's public description; what is kept, and for how
/// long, is our own choice.</summary>
public sealed class SessionShelfTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("shelf").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static SavedSession Saved(DateTimeOffset at, int shards = 1) =>
        new("s7", new Uri("wss://back.invalid"), 41, at, shards, GatewayRig.Me, new Snowflake(901), [new Snowflake(70), new Snowflake(71)]);

    [Fact]
    public void Write_ThenRead_GivesTheSame()
    {
        var shelf = new FileSessionShelf(Path.Combine(folder, "made", "new"));
        var saved = Saved(new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero));
        shelf.Write(3, saved with { Sequence = 1 });
        shelf.Write(3, saved);
        var read = shelf.Read(3)!;
        Assert.Equal(saved with { Guilds = [] }, read with { Guilds = [] }, EqualityComparer<SavedSession>.Create((a, b) => a!.ToString() == b!.ToString()));
        Assert.Equal(saved.Guilds, read.Guilds);
        Assert.Null(shelf.Read(2));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Assert.Single(Directory.GetFiles(Path.Combine(folder, "made", "new")))));
        shelf.Write(3, null);
        Assert.Null(shelf.Read(3));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("""{"session_id":"s","resume_url":"nowhere","sequence":1,"me":"1","guilds":[]}""")]
    [InlineData("""{"session_id":"s","resume_url":"wss://x","sequence":"many","me":"1","guilds":[]}""")]
    [InlineData("""{"session_id":"s","resume_url":"wss://x","sequence":1,"me":"1"}""")]
    public void Read_ABrokenFile_CountsAsNone(string text)
    {
        File.WriteAllText(Path.Combine(folder, "session-0.json"), text);
        Assert.Null(new FileSessionShelf(folder).Read(0));
    }

    [Fact]
    public async Task RunAsync_ASavedSession_IsResumedFromItsSequence()
    {
        var shelf = new FileSessionShelf(folder);
        shelf.Write(0, Saved(new SteppedClock().GetUtcNow() - TimeSpan.FromMinutes(2)));
        await using var rig = new GatewayRig(shelf: shelf);
        var socket = await rig.NextAsync();
        Assert.Equal("wss://back.invalid/?v=10&encoding=json", socket.Url.AbsoluteUri);
        socket.Hello();
        var resume = await socket.HearAsync(6);
        Assert.Equal(("s7", 41L), (resume.GetProperty("session_id").GetString(), resume.GetProperty("seq").GetInt64()));
        socket.Event("MESSAGE_CREATE", 42, Samples.Reply);
        socket.Event("RESUMED", 43, "{}");
        var ready = await rig.TookAsync<Ready>();
        Assert.Equal((false, GatewayRig.Me, new Snowflake(901)), (ready.Fresh, ready.Me.Id, ready.Application));
        Assert.Equal([new Snowflake(70), new Snowflake(71)], ready.Guilds);
        Assert.IsType<MessageCame>(rig.Taken[0]); // Missed while no process ran, and told now.
    }

    [Theory]
    [InlineData(61, 1)] // Minutes: an hour is the longest that is tried.
    [InlineData(2, 2)] // Divided otherwise.
    public async Task RunAsync_ASavedSessionThatIsNoUse_BeginsANewOne(int minutes, int shards)
    {
        var shelf = new FileSessionShelf(folder);
        shelf.Write(0, Saved(new SteppedClock().GetUtcNow() - TimeSpan.FromMinutes(minutes), shards));
        await using var rig = new GatewayRig(shelf: shelf);
        await rig.BeginAsync();
    }

    [Fact]
    public async Task RunAsync_EventsDoneOutOfOrder_TheSavedSequenceIsBelowTheFirstThatIsNotDone()
    {
        var shelf = new FileSessionShelf(folder);
        await using var rig = new GatewayRig(shelf: shelf) { DoneAtOnce = false };
        var socket = await rig.BeginAsync();
        rig.Finish(0); // READY, sequence 1.
        for (var sequence = 2; sequence <= 4; sequence++)
            socket.Event("THREAD_DELETE", sequence, $$"""{"id":"8{{sequence}}"}""");
        await rig.TookAsync<ThreadGone>(3);
        rig.Finish(2);
        rig.Finish(3);
        await rig.InTimeAsync(() => shelf.Read(0)?.Sequence == 1);
        rig.Finish(1);
        await rig.InTimeAsync(() => shelf.Read(0)?.Sequence == 4);
        Assert.Equal("s1", shelf.Read(0)!.SessionId);
    }

    [Fact]
    public async Task RunAsync_BetweenSaves_TwoSecondsPass()
    {
        var counting = new CountingShelf();
        await using var rig = new GatewayRig(shelf: counting);
        var socket = await rig.BeginAsync();
        for (var sequence = 2; sequence <= 40; sequence++)
        {
            socket.Event("THREAD_DELETE", sequence, """{"id":"81"}""");
            await rig.TookAsync<ThreadGone>(sequence - 1);
            rig.Clock.Advance(TimeSpan.FromMilliseconds(100)); // 3.9 s in all.
        }
        Assert.InRange(counting.Writes, 0, 2);
        await rig.StopAsync(keepSession: true).WaitAsync(Wait.Guard);
        Assert.Equal(40, counting.Last?.Sequence);
    }

    [Fact]
    public async Task StopAsync_KeepSession_SavesAtOnceAndWithoutItForgets()
    {
        var shelf = new FileSessionShelf(folder);
        foreach (var keep in (bool[])[true, false])
        {
            await using var rig = new GatewayRig(shelf: shelf);
            if (keep)
                await rig.BeginAsync();
            else
                await rig.NextAsync();
            await rig.StopAsync(keep).WaitAsync(Wait.Guard);
            Assert.Equal(keep, shelf.Read(0) is not null);
        }
    }

    [Fact]
    public async Task RunAsync_TheSessionIsDead_IsTakenOffTheShelfAtOnce()
    {
        var shelf = new FileSessionShelf(folder);
        shelf.Write(0, Saved(new SteppedClock().GetUtcNow()));
        await using var rig = new GatewayRig(shelf: shelf);
        var socket = await rig.NextAsync();
        socket.Hello();
        socket.Say("""{"op":9,"d":false}""");
        await Wait.UntilAsync(() => shelf.Read(0) is null, "it is still there");
    }

    [Fact]
    public async Task RunAsync_AShelfThatFails_DoesNotStopTheGateway()
    {
        await using var rig = new GatewayRig(shelf: new FullShelf());
        var socket = await rig.BeginAsync();
        await rig.InTimeAsync(() => rig.Clock.GetUtcNow().Second >= 5);
        socket.Event("THREAD_DELETE", 2, """{"id":"81"}""");
        await rig.TookAsync<ThreadGone>();
    }

    private sealed class CountingShelf : ISessionShelf
    {
        public int Writes { get; private set; }

        public SavedSession? Last { get; private set; }

        public SavedSession? Read(int shard) => null;

        public void Write(int shard, SavedSession? session)
        {
            Writes++;
            Last = session;
        }
    }

    private sealed class FullShelf : ISessionShelf
    {
        public SavedSession? Read(int shard) => null;

        public void Write(int shard, SavedSession? session) => throw new IOException("The disk is full.");
    }
}
