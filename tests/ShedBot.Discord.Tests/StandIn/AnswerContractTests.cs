using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.Checks.Contract;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>What the stand-in answers, held against the platform's own published description (OpenAPI, version 10): every route once, and
/// each answer must fit the schema of its status, with no field the schema does not name.</summary>
public class AnswerContractTests(ITestOutputHelper output)
{
    // The page on threads says that a forum post is answered with its first message; the description does not name it.
    private static readonly string[] KnownDifferences = ["/message: the platform knows no such field here"];

    [Fact]
    public async Task EveryRoute_Answered_FitsTheDescription()
    {
        var path = SharedFolder.Description(AppContext.BaseDirectory, Environment.GetEnvironmentVariable(SharedFolder.Variable));
        if (path is null)
        {
            output.WriteLine("The platform's published description is not here, so the stand-in's answers are not held against it.");
            return;
        }
        var description = Description.Read(path, Strictness.Strict);
        await using var scene = await Scene.SetAsync();
        await PlayAsync(scene);
        var wrong = new List<string>();
        var held = 0;
        foreach (var request in scene.Platform.Requests.Where(r => r.Answer is not null))
        {
            var schema = request.Status >= 400 ? "/components/schemas/ErrorResponse" : $"/paths/{request.Route.Replace("/", "~1", StringComparison.Ordinal)}/{Verb(request.Method)}/responses/{request.Status}/content/application~1json/schema";
            var answer = JsonDocument.Parse(request.Answer!).RootElement;
            held++;
            wrong.AddRange(Reasons.Of(description.Evaluate(schema, answer)).Where(r => !KnownDifferences.Any(r.EndsWith)).Select(r => $"{request.Method} {request.Route} {request.Status}: {r}"));
        }
        output.WriteLine($"{held} answers of {scene.Platform.Requests.Select(r => r.Method + r.Route).Distinct().Count()} routes held against the description.");
        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Distinct()));
        Assert.True(held >= 30);
    }

    private static string Verb(string method) => method switch { "GET" => "get", "POST" => "post", "PUT" => "put", "PATCH" => "patch", _ => "delete" };

    private static async Task PlayAsync(Scene s)
    {
        var (platform, bot, app) = (s.Platform, s.Bot, s.Platform.ApplicationId);
        foreach (var path in new[] { "users/@me", "applications/@me", "gateway", "gateway/bot", "users/@me/guilds", $"guilds/{s.Club.Id}", $"guilds/{s.Club.Id}/channels", $"guilds/{s.Club.Id}/roles", $"guilds/{s.Club.Id}/members/{s.Ann.Id}", $"channels/{s.Room.Id}", "channels/1", "guilds/1" })
            await bot.CallAsync("GET", path);
        foreach (var scope in new[] { $"applications/{app}/commands", $"applications/{app}/guilds/{s.Club.Id}/commands" })
        {
            await bot.CallAsync("PUT", scope, """[{"name":"hello","description":"Say hello","options":[{"name":"what","description":"x","type":3,"required":true,"choices":[{"name":"a","value":"a"}]}]},{"name":"Look at this","type":3,"default_member_permissions":"8192"}]""");
            await bot.CallAsync("GET", scope + "?with_localizations=true");
        }
        var channel = $"channels/{s.Room.Id}";
        await MessagesAsync(s, channel);
        await ThreadsAsync(s, channel);
        await InteractionsAsync(s);
        var direct = await bot.CallAsync("POST", "users/@me/channels", $$"""{"recipient_id":"{{s.Ann.Id}}"}""");
        await bot.CallAsync("POST", $"channels/{direct.Body.GetProperty("id").GetString()}/messages", """{"content":"alone"}""");
        await bot.CallAsync("GET", $"channels/{direct.Body.GetProperty("id").GetString()}");
        Assert.Empty(platform.Violations);
    }

    private static async Task MessagesAsync(Scene s, string channel)
    {
        var bot = s.Bot;
        var panel = await s.PanelAsync(Everything);
        await bot.CallAsync("GET", $"{channel}/messages/{panel.Id}");
        await bot.CallAsync("PUT", $"{channel}/messages/{panel.Id}/reactions/{Uri.EscapeDataString("✅")}/@me");
        await bot.CallAsync("PATCH", $"{channel}/messages/{panel.Id}", """{"components":[{"type":10,"content":"Changed."}]}""");
        var asked = await s.Platform.SayAsync(s.Ann, s.Room, "look", mentions: s.Platform.Bot);
        await bot.CallAsync("POST", $"{channel}/messages", $$$"""{"content":"a reply <@{{{s.Ann.Id}}}>","nonce":"n1","message_reference":{"message_id":"{{{asked.Id}}}"},"embeds":[{"title":"t","description":"d","fields":[{"name":"n","value":"v"}],"footer":{"text":"f"}}]}""");
        await PictureAsync(bot, $"{channel}/messages");
        await bot.CallAsync("GET", $"{channel}/messages?limit=10");
    }

    private static async Task ThreadsAsync(Scene s, string channel)
    {
        var (platform, bot) = (s.Platform, s.Bot);
        var start = await platform.SayAsync(s.Ann, s.Room, "start here");
        await bot.CallAsync("POST", $"{channel}/messages/{start.Id}/threads", """{"name":"room"}""");
        await bot.CallAsync("POST", $"{channel}/messages/{start.Id}/threads", """{"name":"room"}""");
        await bot.CallAsync("PUT", $"channels/{start.Id}/thread-members/{s.Ann.Id}");
        await bot.CallAsync("GET", $"channels/{start.Id}/thread-members/{s.Ann.Id}?with_member=true");
        await bot.CallAsync("GET", $"channels/{start.Id}");
        await bot.CallAsync("POST", $"{channel}/threads", """{"name":"public","type":11}""");
        await bot.CallAsync("POST", $"{channel}/threads", """{"name":"private","type":12,"invitable":false}""");
        var forum = platform.AddForum(s.Club, "troubles", "engine");
        await bot.CallAsync("GET", $"channels/{forum.Id}");
        await bot.CallAsync("POST", $"channels/{forum.Id}/threads", """{"name":"post","message":{"content":"first"}}""");
        await bot.CallAsync("GET", $"guilds/{s.Club.Id}/threads/active");
        await bot.CallAsync("PATCH", $"channels/{start.Id}", """{"archived":true}""");
        await bot.CallAsync("GET", $"{channel}/threads/archived/public");
        await bot.CallAsync("GET", $"{channel}/users/@me/threads/archived/private");
    }

    private static async Task InteractionsAsync(Scene s)
    {
        var (platform, bot) = (s.Platform, s.Bot);
        var panel = await s.PanelAsync(Everything);
        await platform.PressAsync(s.Ann, panel, "yes");
        var press = await bot.NextAsync("INTERACTION_CREATE");
        await bot.AnswerAsync(press, """{"type":7,"data":{"components":[{"type":10,"content":"Thank you."}]}}""");
        await bot.CallAsync("POST", bot.Hook(press), """{"content":"more","flags":64}""");
        await bot.CallAsync("GET", bot.Hook(press) + "/messages/@original");
        await platform.CommandAsync(s.Ann, s.Room, "hello", new Dictionary<string, object> { ["what"] = "a" });
        var command = await bot.NextAsync("INTERACTION_CREATE");
        await bot.AnswerAsync(command, """{"type":5,"data":{"flags":64}}""");
        await bot.CallAsync("PATCH", bot.Hook(command) + "/messages/@original", """{"content":"hello"}""");
        var more = await bot.CallAsync("POST", bot.Hook(command), """{"content":"more"}""");
        await bot.CallAsync("PATCH", bot.Hook(command) + "/messages/" + more.Body.GetProperty("id").GetString(), """{"content":"less"}""");
        await bot.AnswerAsync(command, """{"type":5}""");
    }

    private static async Task PictureAsync(BareBot bot, string path)
    {
        using var form = new MultipartFormDataContent();
        var file = new ByteArrayContent(Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAMAAAACCAIAAAASFvFNAAAAAElFTkSuQmCC"));
        file.Headers.ContentType = new MediaTypeHeaderValue("image/png");
        form.Add(file, "files[0]", "drawing.png");
        form.Add(new StringContent("""{"attachments":[{"id":0,"filename":"drawing.png","description":"A drawing"}],"flags":32768,"components":[{"type":12,"items":[{"media":{"url":"attachment://drawing.png"},"description":"A drawing"}]}]}""", Encoding.UTF8, "application/json"), "payload_json");
        Assert.Equal(200, (await bot.CallAsync("POST", path, form)).Status);
    }

    private const string Everything = """
        {"flags":32768,"components":[{"type":17,"accent_color":255,"components":[{"type":10,"content":"Does it pull?"},{"type":14},
        {"type":9,"components":[{"type":10,"content":"More"}],"accessory":{"type":2,"style":5,"label":"Read","url":"https://invented.example/"}},
        {"type":1,"components":[{"type":2,"style":1,"label":"Yes","custom_id":"yes"},{"type":2,"style":2,"label":"No","custom_id":"no","disabled":true}]},
        {"type":1,"components":[{"type":3,"custom_id":"pick","placeholder":"Pick","options":[{"label":"a","value":"a"},{"label":"b","value":"b","description":"the other"}]}]},
        {"type":1,"components":[{"type":5,"custom_id":"who"}]}]}]}
        """;
}
