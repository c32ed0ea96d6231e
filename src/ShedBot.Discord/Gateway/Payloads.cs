using System.Buffers;
using System.Text.Json;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>What we say on the gateway. Source: the platform's public description, "Gateway events", send events.</summary>
internal static class Payloads
{
    private const string Library = "ShedBot";
    private const int CustomActivity = 4;

    /// <param name="sequence">The last one that came in; null before the first.</param>
    public static byte[] Heartbeat(long? sequence) => Frame(Ops.Heartbeat, w =>
    {
        if (sequence is { } s)
            w.WriteNumberValue(s);
        else
            w.WriteNullValue();
    });

    public static byte[] Identify(GatewayOptions options, int shard, int shards) => Frame(Ops.Identify, w =>
    {
        w.WriteStartObject();
        w.WriteString("token", options.Token.Reveal());
        w.WriteNumber("intents", (int)options.Intents);
        w.WriteStartObject("properties");
        w.WriteString("os", OperatingSystem.IsWindows() ? "windows" : OperatingSystem.IsMacOS() ? "macos" : "linux");
        w.WriteString("browser", Library);
        w.WriteString("device", Library);
        w.WriteEndObject();
        w.WriteStartArray("shard");
        w.WriteNumberValue(shard);
        w.WriteNumberValue(shards);
        w.WriteEndArray();
        if (options.Presence is { Length: > 0 } line)
            Presence(w, line);
        w.WriteEndObject();
    });

    public static byte[] Resume(BotToken token, string session, long sequence) => Frame(Ops.Resume, w =>
    {
        w.WriteStartObject();
        w.WriteString("token", token.Reveal());
        w.WriteString("session_id", session);
        w.WriteNumber("seq", sequence);
        w.WriteEndObject();
    });

    /// <summary>The address with the query that every connection of ours has.</summary>
    public static Uri Address(Uri url, bool compress) => new UriBuilder(url)
    {
        Path = url.AbsolutePath is "" ? "/" : url.AbsolutePath,
        Query = $"v={Limits.ApiVersion}&encoding=json{(compress ? "&compress=zlib-stream" : "")}",
    }.Uri;

    private static void Presence(Utf8JsonWriter w, string line)
    {
        w.WriteStartObject("presence");
        w.WriteNull("since");
        w.WriteStartArray("activities");
        w.WriteStartObject();
        w.WriteString("name", line);
        w.WriteNumber("type", CustomActivity);
        w.WriteString("state", line);
        w.WriteEndObject();
        w.WriteEndArray();
        w.WriteString("status", "online");
        w.WriteBoolean("afk", false);
        w.WriteEndObject();
    }

    private static byte[] Frame(int op, Action<Utf8JsonWriter> inside)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var w = new Utf8JsonWriter(bytes))
        {
            w.WriteStartObject();
            w.WriteNumber("op", op);
            w.WritePropertyName("d");
            inside(w);
            w.WriteEndObject();
        }
        return bytes.WrittenSpan.ToArray();
    }
}
