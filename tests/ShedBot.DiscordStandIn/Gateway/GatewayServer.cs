using System.Net.WebSockets;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Opens sockets and keeps them until they end.</summary>
internal sealed class GatewayServer(Realm realm, FaultInjector faults, Action<string> violate)
{
    // RFC 6455, section 1.3: the accept key is the SHA-1 of the client's key and this text.
    private const string HandshakeText = "258EAFA5-E914-47DA-95CA-C5AB0DC85B11";

    public static bool Asked(HttpContext context) =>
        context.Request.Headers.Upgrade.ToString().Equals("websocket", StringComparison.OrdinalIgnoreCase);

    public async Task ServeAsync(HttpContext context, CancellationToken stopping)
    {
        var query = context.Request.Query.ToDictionary(q => q.Key, q => q.Value.ToString());
        var report = new ConnectionReport(context.Request.Path, query, realm.Now);
        // The socket is taken by hand, not through the framework, so that frames made beforehand and halves of frames can be written too.
        var raw = await UpgradeAsync(context).ConfigureAwait(false);
        var socket = WebSocket.CreateFromStream(raw, new WebSocketCreationOptions { IsServer = true });
        using var connection = new Connection(socket, raw, context.Abort, query.GetValueOrDefault("compress") == "zlib-stream", report);
        var talk = new Talk(realm, faults, connection, violate);
        lock (realm.Gate)
        {
            realm.Hub.Reports.Add(report);
            realm.Hub.Connections.Add(connection);
            talk.Begin(query);
        }
        using var watch = realm.Options.Clock.CreateTimer(_ => talk.Watch(), null, realm.Options.HeartbeatInterval, realm.Options.HeartbeatInterval);
        try
        {
            await connection.RunAsync(talk.Hear, stopping).ConfigureAwait(false);
        }
        finally
        {
            lock (realm.Gate)
            {
                report.EndedAt = realm.Now;
                realm.Hub.Connections.Remove(connection);
                talk.End();
                realm.Changed();
            }
        }
    }

    private static async Task<Stream> UpgradeAsync(HttpContext context)
    {
        var key = context.Request.Headers.SecWebSocketKey.ToString();
#pragma warning disable CA5350 // The handshake of the standard is made with SHA-1; nothing secret rests on it.
        var accept = Convert.ToBase64String(SHA1.HashData(Encoding.ASCII.GetBytes(key + HandshakeText)));
#pragma warning restore CA5350
        context.Response.Headers.Connection = "Upgrade";
        context.Response.Headers.Upgrade = "websocket";
        context.Response.Headers.SecWebSocketAccept = accept;
        return await context.Features.GetRequiredFeature<IHttpUpgradeFeature>().UpgradeAsync().ConfigureAwait(false);
    }
}
