using System.Text.Json;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>The stand-in against the platform's published pages on messages, threads, rate limits and codes (August 2026).</summary>
public class RequestRulesTests
{
    [Fact]
    public async Task Send_SameNonceEnforced_GivesTheEarlierMessage()
    {
        await using var scene = await Scene.SetAsync();
        const string body = """{"content":"once","nonce":"n1","enforce_nonce":true}""";
        var first = await scene.Bot.CallAsync("POST", $"channels/{scene.Room.Id}/messages", body);
        var second = await scene.Bot.CallAsync("POST", $"channels/{scene.Room.Id}/messages", body);
        Assert.Equal(Id(first), Id(second));
        Assert.Single(scene.Platform.Messages(scene.Room));
    }

    [Fact]
    public async Task Thread_ShutOrLocked_RefusesEditsOpensOnSpeechAndKeepsOthersOut()
    {
        await using var scene = await Scene.SetAsync();
        var (status, made) = await scene.Bot.CallAsync("POST", $"channels/{scene.Room.Id}/threads", """{"name":"room","type":11}""");
        Assert.Equal(201, status);
        var thread = scene.Platform.ChannelOf(ulong.Parse(made.GetProperty("id").GetString()!, System.Globalization.CultureInfo.InvariantCulture))!;
        var path = $"channels/{thread.Id}/messages";
        var said = await scene.Bot.CallAsync("POST", path, """{"content":"a"}""");
        await scene.Platform.ArchiveAsync(thread);
        Assert.Equal(50083, Code(await scene.Bot.CallAsync("PATCH", $"{path}/{Id(said)}", """{"content":"b"}""")));
        Assert.Equal(200, (await scene.Bot.CallAsync("POST", path, """{"content":"c"}""")).Status);
        Assert.False(thread.Thread!.Archived);
        await scene.Platform.ArchiveAsync(thread, archived: true, locked: true);
        Assert.Equal(160005, Code(await scene.Bot.CallAsync("POST", path, """{"content":"d"}""")));
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.SayAsync(scene.Ann, thread, "e"));
    }

    [Fact]
    public async Task Thread_FromOneMessageTwice_Is160004AndItsIdIsTheMessages()
    {
        await using var scene = await Scene.SetAsync();
        var start = await scene.Platform.SayAsync(scene.Ann, scene.Room, "start");
        var path = $"channels/{scene.Room.Id}/messages/{start.Id}/threads";
        Assert.Equal(start.Id.ToString(), Id(await scene.Bot.CallAsync("POST", path, """{"name":"room"}""")));
        Assert.Equal(160004, Code(await scene.Bot.CallAsync("POST", path, """{"name":"room"}""")));
    }

    [Theory]
    [InlineData(Rights.ViewChannel, 50001)]
    [InlineData(Rights.SendMessages, 50013)]
    public async Task Send_WithoutARight_IsRefused(Rights taken, int code)
    {
        await using var scene = await Scene.SetAsync();
        scene.Platform.SetRights(scene.Room, scene.Platform.Bot, deny: taken);
        Assert.Equal(code, Code(await scene.Bot.CallAsync("POST", $"channels/{scene.Room.Id}/messages", """{"content":"a"}""")));
    }

    [Theory]
    [InlineData(DirectMessages.Blocked, 50007)]
    [InlineData(DirectMessages.NoSharedServer, 50278)]
    public async Task DirectMessage_Unwelcome_OpensButIsNotTaken(DirectMessages how, int code)
    {
        await using var scene = await Scene.SetAsync();
        scene.Ann.DirectMessages = how;
        // One public client sends ids as numbers.
        var open = await scene.Bot.CallAsync("POST", "users/@me/channels", $$"""{"recipient_id":{{scene.Ann.Id}}}""");
        Assert.Equal(200, open.Status);
        Assert.Equal(code, Code(await scene.Bot.CallAsync("POST", $"channels/{Id(open)}/messages", """{"content":"a"}""")));
    }

    [Fact]
    public async Task Mentions_Narrowed_RingOnlyForThoseAllowed()
    {
        await using var scene = await Scene.SetAsync();
        var text = $"<@{scene.Ann.Id}> and <@{scene.Club.Owner.Id}>";
        var quiet = await scene.PanelAsync(JsonSerializer.Serialize(new { content = text, allowed_mentions = new { parse = Array.Empty<string>() } }));
        Assert.Empty(quiet.RangFor);
        var one = await scene.PanelAsync(JsonSerializer.Serialize(new { content = text, allowed_mentions = new { parse = Array.Empty<string>(), users = new[] { scene.Ann.Id.ToString() } } }));
        Assert.Equal([scene.Ann.Id], one.RangFor);
        Assert.Equal(2, (await scene.PanelAsync(JsonSerializer.Serialize(new { content = text }))).RangFor.Count);
    }

    [Fact]
    public async Task Forum_PlainMessageOrPostWithout_IsRefused()
    {
        await using var scene = await Scene.SetAsync();
        var forum = scene.Platform.AddForum(scene.Club, "troubles");
        Assert.Equal(40058, Code(await scene.Bot.CallAsync("POST", $"channels/{forum.Id}/messages", """{"content":"a"}""")));
        Assert.Equal(50035, Code(await scene.Bot.CallAsync("POST", $"channels/{forum.Id}/threads", """{"name":"post"}""")));
        var post = await scene.Bot.CallAsync("POST", $"channels/{forum.Id}/threads", """{"name":"post","message":{"content":"first"}}""");
        Assert.Equal(Id(post), post.Body.GetProperty("message").GetProperty("id").GetString());
        Assert.Single(scene.Platform.Threads(forum));
    }

    [Fact]
    public async Task Faults_Armed_HappenOnceAreCountedAndSayWhetherTheDeedWasDone()
    {
        await using var scene = await Scene.SetAsync();
        const string route = "POST /channels/{channel_id}/messages";
        async Task<int> SendAsync() => (await scene.Bot.CallAsync("POST", $"channels/{scene.Room.Id}/messages", """{"content":"a"}""")).Status;
        scene.Platform.Faults.Next(FaultKind.RateLimitedGlobal, route);
        scene.Platform.Faults.Next(FaultKind.ServerErrorHtml, route);
        scene.Platform.Faults.Next(FaultKind.ServerErrorAfterHandling, route);
        scene.Platform.Faults.Next(FaultKind.DroppedMidBody, route);
        foreach (var status in new[] { 429, 502, 502 })
            Assert.Equal(status, await SendAsync());
        Assert.Single(scene.Platform.Messages(scene.Room));
        await Assert.ThrowsAsync<HttpRequestException>(SendAsync);
        Assert.Equal(2, scene.Platform.Messages(scene.Room).Count);
        Assert.Equal(200, await SendAsync());
        Assert.All(scene.Platform.Faults.Injected.Values, times => Assert.Equal(1, times));
    }

    [Fact]
    public async Task Events_DuplicatedAndReordered_ComeTwiceAndCrosswiseWithRisingNumbers()
    {
        await using var scene = await Scene.SetAsync();
        var (one, two) = (scene.Platform.DirectChannel(scene.Ann), scene.Platform.DirectChannel(scene.Platform.AddPerson("invented-ben")));
        scene.Platform.Faults.Next(FaultKind.DuplicatedEvent);
        await scene.Platform.SayAsync(scene.Ann, one, "twice");
        var first = await scene.Bot.NextAsync("MESSAGE_CREATE");
        var number = scene.Bot.Sequence;
        Assert.Equal(first.GetRawText(), (await scene.Bot.NextAsync("MESSAGE_CREATE")).GetRawText());
        Assert.Equal(number + 1, scene.Bot.Sequence);
        scene.Platform.Faults.Next(FaultKind.ReorderedEvents);
        await scene.Platform.SayAsync(scene.Ann, one, "earlier");
        await scene.Platform.SayAsync(two.Recipient!, two, "later");
        Assert.Equal("later", (await scene.Bot.NextAsync("MESSAGE_CREATE")).GetProperty("content").GetString());
        Assert.Equal("earlier", (await scene.Bot.NextAsync("MESSAGE_CREATE")).GetProperty("content").GetString());
    }

    private static string? Id((int Status, JsonElement Body) answer) => answer.Body.GetProperty("id").GetString();

    private static int Code((int Status, JsonElement Body) answer) => answer.Body.GetProperty("code").GetInt32();
}
