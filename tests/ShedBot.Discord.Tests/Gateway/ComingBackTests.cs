using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source of what is expected: the platform's public description, "Gateway" (resuming, disconnecting) and "Opcodes and status codes" (close event codes); where it is
/// silent (1000 and 1001 from the platform, the number of tries) it is our own choice.</summary>
public sealed class ComingBackTests
{
    private const string Query = "?v=10&encoding=json";

    [Theory]
    [InlineData(4000)]
    [InlineData(4001)]
    [InlineData(4002)]
    [InlineData(4005)]
    [InlineData(1000)]
    [InlineData(1001)]
    [InlineData(4999)] // A code that nobody has heard of.
    public async Task RunAsync_CodeThatMayResume_ResumesOnTheGivenAddressWithTheSameQuery(int code)
    {
        await using var rig = new GatewayRig();
        var first = await rig.BeginAsync();
        first.Event("TYPING_START", 42, "{}");
        first.CloseWith(code);
        await rig.Clock.PassAsync(1.25);
        await ResumesAsync(rig, await rig.NextAsync(), 42);
    }

    [Fact]
    public async Task RunAsync_LinkLostWithoutACode_Resumes()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Drop();
        await rig.Clock.PassAsync(1.25);
        await ResumesAsync(rig, await rig.NextAsync(), 1);
    }

    [Fact]
    public async Task RunAsync_Code4008_ResumesAfterAPause()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).CloseWith(4008);
        await rig.Clock.PassAsync(5);
        await ResumesAsync(rig, await rig.NextAsync(), 1);
    }

    [Theory]
    [InlineData(4003)]
    [InlineData(4006)]
    [InlineData(4007)]
    [InlineData(4009)]
    public async Task RunAsync_CodeThatEndsTheSession_IdentifiesAtTheFrontWithoutTheOldSequence(int code)
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).CloseWith(code);
        await rig.Clock.PassAsync(1.25);
        await IdentifiesAsync(rig);
    }

    [Theory]
    [InlineData(4004, "token")]
    [InlineData(4010, "shards")]
    [InlineData(4011, "shards")]
    [InlineData(4012, "newer ShedBot")]
    [InlineData(4013, "newer ShedBot")]
    [InlineData(4014, "privileged")]
    public async Task RunAsync_FatalCode_StopsWithAdvice(int code, string word)
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).CloseWith(code);
        var stopped = await Assert.ThrowsAsync<GatewayFatalException>(() => rig.Run.WaitAsync(Wait.Guard));
        Assert.Equal(code, stopped.Code);
        Assert.Contains(word, stopped.Message, StringComparison.Ordinal);
        Assert.Equal(1, rig.TimesDialled);
    }

    [Fact]
    public async Task RunAsync_Op7_ResumesAtOnceAndKeepsTheSession()
    {
        await using var rig = new GatewayRig();
        var first = await rig.BeginAsync();
        first.Say("""{"op":7,"d":null}""");
        await ResumesAsync(rig, await rig.NextAsync(), 1);
        Assert.Equal(4000, first.LeftWith); // 1000 or 1001 would end the session.
    }

    [Fact]
    public async Task RunAsync_Op7BeforeHello_ResumesToo()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Drop();
        await rig.Clock.PassAsync(1.25);
        (await rig.NextAsync()).Say("""{"op":7,"d":null}""");
        await rig.Clock.PassAsync(2.5); // Not at once: it is the second end within a minute.
        await ResumesAsync(rig, await rig.NextAsync(), 1);
    }

    [Fact]
    public async Task RunAsync_Op9True_WaitsAndResumes()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Say("""{"op":9,"d":true}""");
        await rig.Clock.PassAsync(3); // 1 to 5 s by chance, here a half.
        await ResumesAsync(rig, await rig.NextAsync(), 1);
    }

    [Fact]
    public async Task RunAsync_Op9False_WaitsAndIdentifiesWithoutTheOldSequence()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Say("""{"op":9,"d":false}""");
        await rig.Clock.PassAsync(3);
        await IdentifiesAsync(rig);
    }

    [Fact]
    public async Task RunAsync_Replay_ComesInOrderThenResumedSaysSo()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Drop();
        await rig.Clock.PassAsync(1.25);
        var second = await rig.NextAsync();
        second.Hello();
        await second.HearAsync(6);
        second.Event("THREAD_DELETE", 2, """{"id":"11","guild_id":"70"}""");
        second.Event("THREAD_DELETE", 3, """{"id":"12","guild_id":"70"}""");
        second.Event("RESUMED", 4, "{}");
        var again = await rig.TookAsync<Ready>(2);
        Assert.False(again.Fresh);
        Assert.Equal(GatewayRig.Me, again.Me.Id);
        Assert.Equal([11UL, 12UL], rig.Taken.OfType<ThreadGone>().Select(t => t.Thread.Value));
        Assert.Same(again, rig.Taken[^1]);
    }

    [Fact]
    public async Task RunAsync_TheGivenAddressDoesNotAnswer_TriesTheSessionAtTheFrontAsLongAsNobodyAnswers()
    {
        await using var rig = new GatewayRig(unreachable: true);
        await rig.Clock.PassAsync(1.25);
        await rig.Clock.PassAsync(2.5);
        await rig.Clock.AskedAsync(5);
        rig.Unreachable = false;
        await rig.Clock.PassAsync(5);
        var first = await rig.BeginAsync();
        rig.Unreachable = true;
        first.Drop();
        await rig.InTimeAsync(() => rig.TimesDialled >= 8);
        rig.Unreachable = false;
        var second = await rig.NextInTimeAsync();
        Assert.Equal("wss://front.invalid/" + Query, second.Url.AbsoluteUri);
        second.Hello();
        Assert.Equal("s1", (await second.HearAsync(6)).GetProperty("session_id").GetString());
    }

    [Fact]
    public async Task RunAsync_TwoResumesThatBringNothing_BeginANewSession()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).Drop();
        await rig.Clock.PassAsync(1.25);
        foreach (var wait in new[] { 2.5, 5 })
        {
            var resuming = await rig.NextAsync();
            resuming.Hello();
            await resuming.HearAsync(6);
            resuming.Drop();
            await rig.Clock.PassAsync(wait);
        }
        await IdentifiesAsync(rig);
    }

    [Fact]
    public async Task RunAsync_1000AgainWhileResuming_BeginsANewSession()
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync()).CloseWith(1000);
        await rig.Clock.PassAsync(1.25);
        var second = await rig.NextAsync();
        second.Hello();
        await second.HearAsync(6);
        second.CloseWith(1000);
        await rig.Clock.PassAsync(2.5);
        await IdentifiesAsync(rig);
    }

    [Fact]
    public async Task RunAsync_AfterAMinuteOfHealth_WaitsAreShortAgain()
    {
        await using var rig = new GatewayRig(unreachable: true);
        await rig.Clock.PassAsync(1.25);
        await rig.Clock.PassAsync(2.5);
        await rig.Clock.AskedAsync(5);
        rig.Unreachable = false;
        await rig.Clock.PassAsync(5);
        var socket = await rig.BeginAsync();
        await rig.Clock.PassAsync(20);
        await socket.HearAsync(1);
        await rig.Clock.PassAsync(40);
        await socket.HearAsync(1, nth: 2);
        socket.CloseWith(4000);
        await rig.Clock.PassAsync(1.25);
        await rig.NextAsync();
    }

    [Theory]
    [InlineData("ws://back.invalid")] // Less private than the first: the token must not go there.
    [InlineData("not an address")]
    [InlineData("")]
    public async Task RunAsync_AResumeAddressThatCannotBeUsed_ResumesAtTheFront(string resume)
    {
        await using var rig = new GatewayRig();
        (await rig.BeginAsync(resume: resume)).CloseWith(4000);
        await rig.Clock.PassAsync(1.25);
        Assert.Equal("front.invalid", (await rig.NextAsync()).Url.Host);
    }

    private static async Task ResumesAsync(GatewayRig rig, ScriptedSocket socket, long sequence)
    {
        Assert.Equal("wss://back.invalid/" + Query, socket.Url.AbsoluteUri);
        socket.Hello();
        var resume = await socket.HearAsync(6);
        Assert.Equal(GatewayRig.Token, resume.GetProperty("token").GetString());
        Assert.Equal("s1", resume.GetProperty("session_id").GetString());
        Assert.Equal(sequence, resume.GetProperty("seq").GetInt64());
        socket.Event("RESUMED", sequence + 1, "{}");
        await rig.TookAsync<Ready>(2);
        Assert.DoesNotContain(socket.Heard, h => h.GetProperty("op").GetInt32() == 2);
    }

    private static async Task IdentifiesAsync(GatewayRig rig)
    {
        var socket = await rig.NextInTimeAsync(); // There must be five seconds between two identifies of one shard.
        Assert.Equal("wss://front.invalid/" + Query, socket.Url.AbsoluteUri);
        socket.Hello();
        await socket.HearAsync(2);
        socket.Say("""{"op":1}""");
        Assert.Equal(System.Text.Json.JsonValueKind.Null, (await socket.HearAsync(1)).ValueKind); // The old sequence is forgotten.
        Assert.DoesNotContain(socket.Heard, h => h.GetProperty("op").GetInt32() == 6);
    }
}
