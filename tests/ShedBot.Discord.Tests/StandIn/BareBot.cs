using System.Net.Http.Json;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using ShedBot.DiscordStandIn;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>The barest client there can be, so that the stand-in is tried without our own client.</summary>
internal sealed class BareBot : IAsyncDisposable
{
    private readonly HttpClient http;
    private readonly ClientWebSocket socket = new();

    private BareBot(StandIn platform)
    {
        Platform = platform;
        http = new HttpClient { BaseAddress = new Uri(platform.ApiAddress) };
        http.DefaultRequestHeaders.Add("Authorization", $"Bot {platform.Options.Token}");
        http.DefaultRequestHeaders.Add("User-Agent", "DiscordBot (https://invented.example, 1.0)");
    }

    public StandIn Platform { get; }

    public string SessionId { get; private set; } = "";

    public string ResumeAddress { get; private set; } = "";

    public long Sequence { get; private set; }

    public static BareBot WithoutSocket(StandIn platform) => new(platform);

    public static async Task<BareBot> LoggedInAsync(StandIn platform, long intents = 4609)
    {
        var bot = await ConnectedAsync(platform, platform.GatewayAddress);
        await bot.SendAsync(2, JsonSerializer.Serialize(new { token = platform.Options.Token, intents, properties = new { os = "x", browser = "x", device = "x" } }));
        var ready = await bot.NextAsync("READY");
        bot.SessionId = ready.GetProperty("session_id").GetString()!;
        bot.ResumeAddress = ready.GetProperty("resume_gateway_url").GetString()!;
        return bot;
    }

    public static async Task<BareBot> ConnectedAsync(StandIn platform, string address)
    {
        var bot = new BareBot(platform);
        await bot.socket.ConnectAsync(new Uri(address + "?v=10&encoding=json"), default);
        Assert.Equal(10, (await bot.FrameAsync()).GetProperty("op").GetInt32());
        return bot;
    }

    public Task SendAsync(int op, string data) => SendTextAsync("{\"op\":" + op + ",\"d\":" + data + "}");

    public Task SendTextAsync(string text) => socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, true, default);

    /// <summary>The next dispatch of that name; others are read past.</summary>
    public async Task<JsonElement> NextAsync(string name)
    {
        while (true)
        {
            var frame = await FrameAsync();
            if (frame.GetProperty("t").GetString() == name)
                return frame.GetProperty("d");
        }
    }

    /// <summary>The next frame of any kind.</summary>
    public async Task<JsonElement> FrameAsync()
    {
        var buffer = new byte[256 * 1024];
        var length = 0;
        ValueWebSocketReceiveResult got;
        do
        {
            got = await socket.ReceiveAsync(buffer.AsMemory(length), new CancellationTokenSource(TimeSpan.FromSeconds(10)).Token);
            length += got.Count;
        }
        while (!got.EndOfMessage);
        Assert.NotEqual(WebSocketMessageType.Close, got.MessageType);
        var frame = JsonDocument.Parse(buffer.AsMemory(0, length)).RootElement;
        if (frame.GetProperty("s").ValueKind == JsonValueKind.Number)
            Sequence = frame.GetProperty("s").GetInt64();
        return frame;
    }

    /// <summary>Reads until the platform closes, and gives its code.</summary>
    public async Task<int?> CloseCodeAsync()
    {
        var buffer = new byte[256 * 1024];
        while ((await socket.ReceiveAsync(buffer.AsMemory(), new CancellationTokenSource(TimeSpan.FromSeconds(10)).Token)).MessageType != WebSocketMessageType.Close)
        {
        }
        return (int?)socket.CloseStatus;
    }

    public void Drop() => socket.Abort();

    public async Task<(int Status, JsonElement Body)> CallAsync(string method, string path, string? json = null)
    {
        using var content = json is null ? null : new StringContent(json, Encoding.UTF8, "application/json");
        return await CallAsync(method, path, content);
    }

    public async Task<(int Status, JsonElement Body)> CallAsync(string method, string path, HttpContent? content)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path) { Content = content };
        using var response = await http.SendAsync(request);
        var body = response.Content.Headers.ContentType?.MediaType == "application/json" ? await response.Content.ReadFromJsonAsync<JsonElement>() : default;
        return ((int)response.StatusCode, body);
    }

    /// <summary>Answers an interaction event.</summary>
    public Task<(int Status, JsonElement Body)> AnswerAsync(JsonElement interaction, string json) =>
        CallAsync("POST", $"interactions/{interaction.GetProperty("id").GetString()}/{interaction.GetProperty("token").GetString()}/callback?with_response=true", json);

    /// <summary>The path of an interaction's webhook.</summary>
    public string Hook(JsonElement interaction) => $"webhooks/{Platform.ApplicationId}/{interaction.GetProperty("token").GetString()}";

    public ValueTask DisposeAsync()
    {
        socket.Dispose();
        http.Dispose();
        return ValueTask.CompletedTask;
    }
}
