using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source of what is expected: the platform's public description, "Gateway", heartbeats: without an answer to the last beat, close with a code other than
/// 1000 and 1001, reconnect and resume. Two intervals are the limit that follows from it.</summary>
public sealed class WatchdogTests
{
    [Fact]
    public async Task RunAsync_BeatsThatNobodyAnswers_ClosesWithinTwoIntervalsAndResumes()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.Acknowledges = false;
        await rig.Clock.PassAsync(20);
        await socket.HearAsync(1);
        await rig.Clock.PassAsync(40);
        await rig.Clock.PassAsync(1.25);
        var second = await rig.NextAsync();
        Assert.Equal(4000, socket.LeftWith);
        Assert.Equal("wss://back.invalid/?v=10&encoding=json", second.Url.AbsoluteUri);
        second.Hello();
        await second.HearAsync(6);
    }

    [Fact]
    public async Task RunAsync_ASocketThatTakesNothing_IsAbortedAndTheSessionResumed()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.Blocked = true; // Neither a beat nor a goodbye gets out.
        await rig.Clock.PassAsync(20);
        await rig.Clock.PassAsync(40);
        await rig.InTimeAsync(() => socket.IsAborted);
        var second = await rig.NextInTimeAsync();
        Assert.Null(socket.LeftWith);
        second.Hello();
        await second.HearAsync(6);
    }

    [Fact]
    public async Task RunAsync_NobodyAnswersTheGoodbye_IsAborted()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.AnswersClose = false;
        socket.Say("""{"op":7}""");
        await rig.InTimeAsync(() => socket.IsAborted);
        await rig.NextInTimeAsync();
    }

    [Fact]
    public async Task RunAsync_AfterAnUnansweredBeat_TheNextConnectionStartsAnew()
    {
        await using var rig = new GatewayRig();
        var first = await rig.BeginAsync();
        first.Acknowledges = false;
        await rig.Clock.PassAsync(20);
        await first.HearAsync(1); // Unanswered when the link is lost.
        first.Drop();
        await rig.Clock.PassAsync(1.25);
        var second = await rig.NextAsync();
        second.Hello();
        await second.HearAsync(6);
        second.Event("RESUMED", 2, "{}");
        await rig.Clock.PassAsync(20);
        await second.HearAsync(1);
        Assert.Null(second.LeftWith);
    }

    [Fact]
    public async Task RunAsync_BeatsAreAnsweredButNoReadyComes_GoesOnBeating()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.NextAsync();
        socket.Hello();
        await socket.HearAsync(2);
        await rig.Clock.PassAsync(20);
        for (var beat = 1; beat <= 5; beat++)
        {
            await socket.HearAsync(1, beat);
            await rig.Clock.PassAsync(40);
        }
        await socket.HearAsync(1, 6);
        Assert.Equal(1, rig.TimesDialled); // An outage of the platform: the session comes later.
    }

    [Theory]
    [InlineData(true, 4000)]
    [InlineData(false, 1000)]
    public async Task StopAsync_KeepSessionOrNot_ClosesWithACodeThatSaysSo(bool keep, int code)
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        await rig.StopAsync(keep).WaitAsync(Wait.Guard);
        await rig.Run.WaitAsync(Wait.Guard);
        Assert.Equal(code, socket.LeftWith);
    }

    [Fact]
    public async Task StopAsync_ADeadLink_GivesUpAfterTwoSeconds()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.Blocked = true;
        var before = rig.Clock.GetUtcNow();
        var stop = rig.StopAsync(keepSession: true);
        await rig.InTimeAsync(() => stop.IsCompleted);
        Assert.True(socket.IsAborted);
        Assert.True(rig.Clock.GetUtcNow() - before >= TimeSpan.FromSeconds(2));
    }

    [Fact]
    public async Task StopAsync_WhileWaitingToComeBack_StopsAtOnce()
    {
        await using var rig = new GatewayRig(unreachable: true);
        await rig.Clock.AskedAsync(1.25);
        await rig.StopAsync(keepSession: true).WaitAsync(Wait.Guard);
        await rig.Run.WaitAsync(Wait.Guard);
        Assert.Equal(1, rig.TimesDialled);
    }

    [Fact]
    public async Task StopAsync_EventsThatComeAfterwards_AreLeftForTheNextSession()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.AnswersClose = false;
        var stop = rig.StopAsync(keepSession: true);
        await Wait.UntilAsync(() => socket.LeftWith is not null, "it did not close");
        socket.Event("THREAD_DELETE", 2, """{"id":"81"}""");
        socket.CloseWith(4000);
        await stop.WaitAsync(Wait.Guard);
        Assert.DoesNotContain(rig.Taken, t => t is ThreadGone);
    }
}
