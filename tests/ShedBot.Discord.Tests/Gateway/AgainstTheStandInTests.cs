using System.Collections.Concurrent;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Over real sockets, against a server written apart from this client from the platform's public description ("Gateway", "Opcodes and status codes"), which notes as a
/// violation whatever the platform would close for.</summary>
public sealed class AgainstTheStandInTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task RunAsync_AClubAndAMessage_SignsInOnceAndHearsBoth(bool compress)
    {
        await using var platform = await StandIn.StartAsync();
        var club = await platform.AddGuildAsync("Invented club");
        var room = platform.AddTextChannel(club, "workshop");
        var ann = platform.AddPerson("invented-ann");
        platform.Join(club, ann);
        await using var live = new Live(platform, compress: compress);
        Assert.Equal(platform.Bot.Id, (await live.TookAsync<Ready>()).Me.Id.Value);
        var there = await live.TookAsync<GuildThere>();
        Assert.Equal((club.Id, "Invented club"), (there.Guild.Id.Value, there.Guild.Name));
        await platform.SayAsync(ann, room, "it drags", mentions: platform.Bot);
        Assert.EndsWith("it drags", (await live.TookAsync<MessageCame>()).Message.Content, StringComparison.Ordinal);
        var seen = Assert.Single(platform.Connections);
        Assert.Equal(4609, seen.Identify!.Value.GetProperty("intents").GetInt32());
        Assert.Empty(platform.Violations);
    }

    [Fact]
    public async Task RunAsync_SwallowedAcks_ClosesAndResumesOnTheGivenAddressWithTheSameQuery()
    {
        await using var platform = await StandIn.StartAsync(new StandInOptions { HeartbeatInterval = TimeSpan.FromMilliseconds(300) });
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.Faults.SwallowAcks = true;
        await Wait.UntilAsync(() => platform.Connections[0].EndedAt is not null, "the dead link was kept");
        platform.Faults.SwallowAcks = false;
        Assert.False((await live.TookAsync<Ready>(2)).Fresh);
        Assert.Equal((4000, (int?)null), (platform.Connections[0].ClosedByClient, platform.Connections[0].ClosedByUs));
        Assert.Equal("/resume/", platform.Connections[1].Path);
        Assert.Equal(platform.Connections[0].Query, platform.Connections[1].Query);
    }

    [Fact]
    public async Task RunAsync_AskedForBeats_AnswersAndStaysWithinTheLimits()
    {
        await using var platform = await StandIn.StartAsync();
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        for (var i = 0; i < 200; i++)
            platform.AskForBeats();
        platform.Dispatch("THREAD_DELETE", """{"id":"5","guild_id":"6"}""");
        await live.TookAsync<ThreadGone>();
        await Wait.UntilAsync(() => platform.Connections[0].Sends >= 110, "beats that were asked for did not come");
        Assert.Equal(110, platform.Connections[0].Sends); // The platform would close over 120 with 4008.
        Assert.InRange(platform.Connections[0].LargestSend, 1, 4096);
        Assert.Empty(platform.Violations);
    }

    [Theory]
    [InlineData(FaultKind.DroppedSocket, false)]
    [InlineData(FaultKind.HalfFrame, false)]
    [InlineData(FaultKind.Reconnect, false)]
    [InlineData(FaultKind.InvalidSessionKept, false)]
    [InlineData(FaultKind.InvalidSessionLost, true)]
    public async Task RunAsync_AfterAFault_HearsWhatWasMissedUnlessTheSessionIsLost(FaultKind kind, bool fresh)
    {
        await using var platform = await StandIn.StartAsync();
        var ann = platform.AddPerson("invented-ann");
        var direct = platform.DirectChannel(ann);
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.Strike(kind);
        if (!fresh)
        {
            await Wait.UntilAsync(() => platform.Connections[0].EndedAt is not null, "the link stood");
            await platform.SayAsync(ann, direct, "missed");
            Assert.Equal("missed", (await live.TookAsync<MessageCame>()).Message.Content);
        }
        Assert.Equal(fresh, (await live.TookAsync<Ready>(2)).Fresh);
        await platform.SayAsync(ann, direct, "afterwards");
        Assert.Equal("afterwards", (await live.TookAsync<MessageCame>(fresh ? 1 : 2)).Message.Content);
        Assert.Empty(platform.Violations);
    }

    [Fact]
    public async Task RunAsync_Op7BeforeHello_SignsInAllTheSame()
    {
        await using var platform = await StandIn.StartAsync();
        platform.Faults.Next(FaultKind.ReconnectBeforeHello);
        await using var live = new Live(platform);
        Assert.True((await live.TookAsync<Ready>()).Fresh);
        Assert.Equal(2, platform.Connections.Count);
        Assert.Empty(platform.Violations);
    }

    [Theory]
    [InlineData(1000, false)]
    [InlineData(1001, false)]
    [InlineData(4000, false)]
    [InlineData(4001, false)]
    [InlineData(4002, false)]
    [InlineData(4005, false)]
    [InlineData(4008, false)]
    [InlineData(4003, true)]
    [InlineData(4007, true)]
    [InlineData(4009, true)]
    public async Task RunAsync_ACloseCodeThatAllowsIt_ComesBack(int code, bool fresh)
    {
        await using var platform = await StandIn.StartAsync();
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.CloseLinks(code);
        Assert.Equal(fresh, (await live.TookAsync<Ready>(2)).Fresh);
        Assert.Equal(fresh ? "/" : "/resume/", platform.Connections[1].Path);
    }

    [Theory]
    [InlineData(4004)]
    [InlineData(4010)]
    [InlineData(4011)]
    [InlineData(4012)]
    [InlineData(4013)]
    [InlineData(4014)]
    public async Task RunAsync_AFatalCloseCode_StopsWithAdvice(int code)
    {
        await using var platform = await StandIn.StartAsync();
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.CloseLinks(code);
        var stopped = await Assert.ThrowsAsync<GatewayFatalException>(() => live.Run.WaitAsync(Wait.Guard));
        Assert.Equal((code, CloseCodes.Advice(code)), (stopped.Code, stopped.Message));
        Assert.Single(platform.Connections);
    }

    [Fact]
    public async Task RunAsync_ThePlatformForgotTheSession_BeginsANewOneAtTheFront()
    {
        await using var platform = await StandIn.StartAsync();
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.ForgetSessions();
        platform.CloseLinks(4000);
        Assert.True((await live.TookAsync<Ready>(2)).Fresh);
        Assert.Equal(["/", "/resume/", "/"], platform.Connections.Select(c => c.Path));
    }

    [Fact]
    public async Task RunAsync_AnEventToldTwice_IsHandedOnBothTimesWithTheSameId()
    {
        // Whoever takes events is to do a thing once; the gateway's part is to change no id and lose none.
        await using var platform = await StandIn.StartAsync();
        var ann = platform.AddPerson("invented-ann");
        var direct = platform.DirectChannel(ann);
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.Faults.Next(FaultKind.DuplicatedEvent);
        var said = await platform.SayAsync(ann, direct, "once");
        await live.TookAsync<MessageCame>(2);
        Assert.All(live.Taken.OfType<MessageCame>(), m => Assert.Equal(said.Id, m.Message.Id.Value));
    }

    [Fact]
    public async Task RunAsync_ANewProcess_GoesOnWithTheSessionAndHearsWhatWasMissed()
    {
        var shelf = new Shelf();
        await using var platform = await StandIn.StartAsync();
        var ann = platform.AddPerson("invented-ann");
        var direct = platform.DirectChannel(ann);
        await using (var first = new Live(platform, shelf))
        {
            await first.TookAsync<Ready>();
            await first.StopAsync(keepSession: true).WaitAsync(Wait.Guard);
        }
        Assert.Equal(4000, platform.Connections[0].ClosedByClient);
        await platform.SayAsync(ann, direct, "while you were away");
        await using var second = new Live(platform, shelf);
        Assert.Equal("while you were away", (await second.TookAsync<MessageCame>()).Message.Content);
        var ready = await second.TookAsync<Ready>();
        Assert.Equal((false, platform.Bot.Id), (ready.Fresh, ready.Me.Id.Value));
        Assert.Null(platform.Connections[1].Identify);
    }

    [Fact]
    public async Task StopAsync_ForGood_EndsTheSession()
    {
        var shelf = new Shelf();
        await using var platform = await StandIn.StartAsync();
        await using var live = new Live(platform, shelf);
        await live.TookAsync<Ready>();
        await live.StopAsync(keepSession: false).WaitAsync(Wait.Guard);
        await Wait.UntilAsync(() => platform.Connections[0].EndedAt is not null, "the link stood");
        Assert.Equal(1000, platform.Connections[0].ClosedByClient);
        Assert.Null(shelf.Read(0));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task RunAsync_AClubIsGone_TellsAnOutageFromBeingSentAway(bool outage)
    {
        await using var platform = await StandIn.StartAsync();
        var club = await platform.AddGuildAsync("Invented club");
        await using var live = new Live(platform);
        await live.TookAsync<GuildThere>();
        await platform.RemoveGuildAsync(club, unavailable: outage);
        var gone = await live.TookAsync<GuildGone>();
        Assert.Equal((club.Id, outage), (gone.Guild.Value, gone.Outage));
    }

    [Fact]
    public async Task RunAsync_AStreamOfFaults_LosesNoMessageAndKeepsTheirOrder()
    {
        await using var platform = await StandIn.StartAsync(new StandInOptions { ReconnectGrace = TimeSpan.FromMilliseconds(100) });
        var ann = platform.AddPerson("invented-ann");
        var direct = platform.DirectChannel(ann);
        await using var live = new Live(platform);
        await live.TookAsync<Ready>();
        platform.Faults.Plan(7, new Dictionary<FaultKind, double>
        {
            [FaultKind.NullFields] = 0.3,
            [FaultKind.UnknownFields] = 0.3,
            [FaultKind.UnknownEvent] = 0.3,
            [FaultKind.DuplicatedEvent] = 0.2,
        });
        for (var i = 0; i < 200; i++)
        {
            if (i is 60 or 120)
                platform.Strike(i == 60 ? FaultKind.HalfFrame : FaultKind.DroppedSocket);
            await platform.SayAsync(ann, direct, $"{i}");
        }
        await Wait.UntilAsync(() => live.Taken.OfType<MessageCame>().Any(m => m.Message.Content == "199"), "the last message did not come");
        var heard = live.Taken.OfType<MessageCame>().Select(m => m.Message.Content!).Distinct();
        Assert.Equal(Enumerable.Range(0, 200).Select(i => $"{i}"), heard);
        Assert.Empty(platform.Violations);
    }

    private sealed class Shelf : ISessionShelf
    {
        private readonly ConcurrentDictionary<int, SavedSession?> kept = [];

        public SavedSession? Read(int shard) => kept.GetValueOrDefault(shard);

        public void Write(int shard, SavedSession? session) => kept[shard] = session;
    }
}
