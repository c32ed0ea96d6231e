using Microsoft.Extensions.Time.Testing;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>The stand-in against the platform's published page on receiving and responding (August 2026) and its table of codes.</summary>
public class InteractionRulesTests
{
    private const string Panel = """
        {"flags":32768,"components":[{"type":17,"components":[{"type":10,"content":"Does it pull?"},
        {"type":1,"components":[{"type":2,"style":1,"label":"Yes","custom_id":"yes"},{"type":2,"style":2,"label":"No","custom_id":"no","disabled":true}]}]}]}
        """;

    [Fact]
    public async Task Press_AnsweredInPlace_ChangesTheMessageOnceAndOnlyOnce()
    {
        await using var scene = await Scene.SetAsync();
        var panel = await scene.PanelAsync(Panel);
        var deed = await scene.Platform.PressAsync(scene.Ann, panel, "yes");
        var told = await scene.Bot.NextAsync("INTERACTION_CREATE");
        Assert.Equal("yes", told.GetProperty("data").GetProperty("custom_id").GetString());
        Assert.Equal(panel.Id.ToString(), told.GetProperty("message").GetProperty("id").GetString());
        Assert.Equal(scene.Ann.Id.ToString(), told.GetProperty("member").GetProperty("user").GetProperty("id").GetString());
        const string answer = """{"type":7,"data":{"components":[{"type":10,"content":"Thank you."}]}}""";
        Assert.Equal(200, (await scene.Bot.AnswerAsync(told, answer)).Status);
        var (status, body) = await scene.Bot.AnswerAsync(told, answer);
        Assert.Equal((400, 40060), (status, body.GetProperty("code").GetInt32()));
        Assert.Equal(7, (await deed.Answered).Type);
        var now = scene.Platform.Now(panel);
        Assert.Equal("Thank you.", now.Words);
        Assert.Single(now.Earlier);
    }

    [Fact]
    public async Task Parts_WithoutNumbers_AreNumberedThroughTheNesting()
    {
        await using var scene = await Scene.SetAsync();
        var panel = await scene.PanelAsync(Panel);
        var container = panel.Parts[0];
        Assert.Equal([1, 2, 3], [Number(container), Number(container.GetProperty("components")[0]), Number(container.GetProperty("components")[1])]);
        Assert.Equal([4, 5], panel.Controls.Select(c => c.PartId));
        static int Number(System.Text.Json.JsonElement part) => part.GetProperty("id").GetInt32();
    }

    [Fact]
    public async Task Press_GreyedOutOrNotThere_NeedsForging()
    {
        await using var scene = await Scene.SetAsync();
        var panel = await scene.PanelAsync(Panel);
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.PressAsync(scene.Ann, panel, "no"));
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.PressAsync(scene.Ann, panel, "other"));
        await scene.Platform.ForgedPressAsync(scene.Ann, panel, "other");
        Assert.Equal("other", (await scene.Bot.NextAsync("INTERACTION_CREATE")).GetProperty("data").GetProperty("custom_id").GetString());
    }

    [Fact]
    public async Task Answer_AfterThreeSeconds_Is10062()
    {
        var clock = new FakeTimeProvider(DateTimeOffset.Parse("2026-05-01T10:00:00Z", System.Globalization.CultureInfo.InvariantCulture));
        await using var scene = await Scene.SetAsync(new StandInOptions { Clock = clock });
        var panel = await scene.PanelAsync(Panel);
        await scene.Platform.PressAsync(scene.Ann, panel, "yes");
        var told = await scene.Bot.NextAsync("INTERACTION_CREATE");
        clock.Advance(TimeSpan.FromSeconds(3.1));
        var (status, body) = await scene.Bot.AnswerAsync(told, """{"type":6}""");
        Assert.Equal((404, 10062), (status, body.GetProperty("code").GetInt32()));
    }

    [Fact]
    public async Task Token_BeforeTheFirstAnswerAndAfterFifteenMinutes_IsRefusedDifferently()
    {
        var clock = new FakeTimeProvider(DateTimeOffset.Parse("2026-05-01T10:00:00Z", System.Globalization.CultureInfo.InvariantCulture));
        await using var scene = await Scene.SetAsync(new StandInOptions { Clock = clock });
        var panel = await scene.PanelAsync(Panel);
        await scene.Platform.PressAsync(scene.Ann, panel, "yes");
        var told = await scene.Bot.NextAsync("INTERACTION_CREATE");
        var early = await scene.Bot.CallAsync("POST", scene.Bot.Hook(told), """{"content":"too early"}""");
        Assert.Equal((404, 10015), (early.Status, early.Body.GetProperty("code").GetInt32()));
        await scene.Bot.AnswerAsync(told, """{"type":6}""");
        clock.Advance(TimeSpan.FromMinutes(14));
        Assert.Equal(200, (await scene.Bot.CallAsync("POST", scene.Bot.Hook(told), """{"content":"in time"}""")).Status);
        clock.Advance(TimeSpan.FromMinutes(1.1));
        var late = await scene.Bot.CallAsync("PATCH", scene.Bot.Hook(told) + "/messages/@original", """{"components":[]}""");
        Assert.Equal((401, 50027), (late.Status, late.Body.GetProperty("code").GetInt32()));
    }

    [Fact]
    public async Task PrivateAnswer_ByTheOrdinaryRoute_IsNotThere()
    {
        await using var scene = await Scene.SetAsync();
        var panel = await scene.PanelAsync(Panel);
        var deed = await scene.Platform.PressAsync(scene.Ann, panel, "yes");
        var told = await scene.Bot.NextAsync("INTERACTION_CREATE");
        await scene.Bot.AnswerAsync(told, """{"type":5,"data":{"flags":64}}""");
        Assert.Null((await deed.Answered).Message);
        await scene.Bot.CallAsync("PATCH", scene.Bot.Hook(told) + "/messages/%40original", """{"content":"between us"}""");
        var answer = (await deed.Settled).Message!;
        Assert.True(answer.Private);
        var (status, body) = await scene.Bot.CallAsync("PATCH", $"channels/{scene.Room.Id}/messages/{answer.Id}", """{"content":"x"}""");
        Assert.Equal((404, 10008), (status, body.GetProperty("code").GetInt32()));
        var ben = scene.Platform.AddPerson("invented-ben");
        scene.Platform.Join(scene.Club, ben);
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.PressAsync(ben, answer, "x"));
    }

    [Fact]
    public async Task Form_FilledIn_ComesBackInLabels()
    {
        await using var scene = await Scene.SetAsync();
        await scene.Bot.CallAsync("PUT", $"applications/{scene.Platform.ApplicationId}/commands", """[{"name":"tell","description":"Tell a trouble","contexts":[0]}]""");
        var deed = await scene.Platform.CommandAsync(scene.Ann, scene.Room, "tell");
        var told = await scene.Bot.NextAsync("INTERACTION_CREATE");
        await scene.Bot.AnswerAsync(told, """{"type":9,"data":{"custom_id":"f","title":"Trouble","components":[{"type":18,"label":"What is it?","component":{"type":4,"custom_id":"what","style":2}}]}}""");
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.SubmitAsync(deed, new Dictionary<string, object>()));
        await scene.Platform.SubmitAsync(deed, new Dictionary<string, object> { ["what"] = "it pulls" });
        var sent = await scene.Bot.NextAsync("INTERACTION_CREATE");
        Assert.Equal("it pulls", sent.GetProperty("data").GetProperty("components")[0].GetProperty("component").GetProperty("value").GetString());
    }

    [Fact]
    public async Task Command_ForModerators_IsNotOfferedToOthers()
    {
        await using var scene = await Scene.SetAsync();
        await scene.Bot.CallAsync("PUT", $"applications/{scene.Platform.ApplicationId}/commands", """[{"name":"settle","description":"For moderators","default_member_permissions":"8192"}]""");
        await Assert.ThrowsAsync<InvalidOperationException>(() => scene.Platform.CommandAsync(scene.Ann, scene.Room, "settle"));
        var role = scene.Platform.AddRole(scene.Club, "stewards", Rights.ManageMessages);
        scene.Platform.Join(scene.Club, scene.Ann, role);
        await scene.Platform.CommandAsync(scene.Ann, scene.Room, "settle");
        await scene.Bot.NextAsync("INTERACTION_CREATE");
    }
}
