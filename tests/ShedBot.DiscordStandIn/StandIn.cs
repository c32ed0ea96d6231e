using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using ShedBot.DiscordStandIn.Control;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.Interactions;
using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

/// <summary>A chat platform on loopback: its gateway and its requests, with a world that tests build and drive. Safe to call from any thread.</summary>
public sealed partial class StandIn : IAsyncDisposable
{
    private const string Version = "/api/v10";
    private readonly WebApplication web;
    private readonly CancellationTokenSource stopping = new();
    private readonly Ledger ledger;
    private readonly Realm realm;

    private StandIn(StandInOptions options)
    {
        Options = options;
        ledger = new Ledger(options.KeepLog);
        var hub = new Hub(Faults);
        realm = new Realm(options, hub);
        hub.Realm = realm;
        var gateway = new GatewayServer(realm, Faults, what => ledger.Violate("gateway", what));
        var rest = new RestServer(realm, Faults, Routes(), ledger);
        var control = new ControlServer(this);
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.Listen(IPAddress.Loopback, options.Port);
            // The platform's own limit is told with its own code, so the server must let a little more through.
            k.Limits.MaxRequestBodySize = RequestReader.MostBytes * 2;
            k.AddServerHeader = false;
        });
        web = builder.Build();
        web.Run(context => ServeAsync(context, gateway, rest, control));
    }

    public StandInOptions Options { get; }

    /// <summary>What goes wrong on purpose.</summary>
    public FaultInjector Faults { get; } = new();

    /// <summary>Address without a path: <c>http://127.0.0.1:port</c>.</summary>
    public string Address => realm.Address;

    /// <summary>Where requests go; ends with a slash.</summary>
    public string ApiAddress => $"{Address}{Version}/";

    /// <summary>Where <c>GET /gateway/bot</c> sends clients.</summary>
    public string GatewayAddress => "ws" + Address["http".Length..] + "/";

    public ulong ApplicationId => realm.ApplicationId;

    /// <summary>The bot's own account.</summary>
    public Person Bot => realm.Bot;

    internal Realm Realm => realm;

    /// <summary>Starts listening on loopback.</summary>
    public static async Task<StandIn> StartAsync(StandInOptions? options = null)
    {
        var standIn = new StandIn(options ?? new StandInOptions());
        await standIn.web.StartAsync().ConfigureAwait(false);
        var addresses = standIn.web.Services.GetRequiredService<IServer>().Features.GetRequiredFeature<IServerAddressesFeature>();
        standIn.realm.Address = addresses.Addresses.First();
        return standIn;
    }

    /// <summary>Cuts every link and stops listening.</summary>
    public async ValueTask DisposeAsync()
    {
        lock (realm.Gate)
        {
            foreach (var connection in realm.Hub.Connections)
                connection.Do(new Outgoing.Drop());
        }
        await stopping.CancelAsync().ConfigureAwait(false);
        await web.DisposeAsync().ConfigureAwait(false);
        stopping.Dispose();
    }

    /// <summary>Runs until the process is told to stop.</summary>
    public Task UntilStoppedAsync() => web.WaitForShutdownAsync();

    private static RouteTable Routes()
    {
        var table = new RouteTable();
        ApplicationRoutes.Add(table);
        UserRoutes.Add(table);
        GuildRoutes.Add(table);
        ChannelRoutes.Add(table);
        MessageRoutes.Add(table);
        ReactionRoutes.Add(table);
        ThreadRoutes.Add(table);
        ThreadMemberRoutes.Add(table);
        CallbackRoute.Add(table);
        WebhookRoutes.Add(table);
        return table;
    }

    private async Task ServeAsync(HttpContext context, GatewayServer gateway, RestServer rest, ControlServer control)
    {
        var path = context.Request.Path.Value ?? "/";
        if (GatewayServer.Asked(context))
            await gateway.ServeAsync(context, stopping.Token).ConfigureAwait(false);
        else if (path.StartsWith(Version + "/", StringComparison.Ordinal))
            await rest.ServeAsync(context, path[Version.Length..]).ConfigureAwait(false);
        else if (path.StartsWith("/control/", StringComparison.Ordinal))
            await control.ServeAsync(context, path["/control/".Length..]).ConfigureAwait(false);
        else if (path.StartsWith("/attachments/", StringComparison.Ordinal))
            await FileAsync(context, path.Split('/')).ConfigureAwait(false);
        else if (path.StartsWith("/ephemeral-attachments/", StringComparison.Ordinal))
            await SentFileAsync(context, path.Split('/')).ConfigureAwait(false);
        else
            context.Response.StatusCode = 404;
    }

    private async Task FileAsync(HttpContext context, string[] path)
    {
        Attachment? file = null;
        lock (realm.Gate)
        {
            if (path.Length == 5 && ulong.TryParse(path[2], out var channelId) && ulong.TryParse(path[3], out var fileId))
                file = realm.Channel(channelId)?.Standing.SelectMany(m => m.Attachments).FirstOrDefault(a => a.Id == fileId);
        }
        var unexpired = long.TryParse(context.Request.Query["ex"], System.Globalization.NumberStyles.HexNumber, null, out var until)
            && realm.Now.ToUnixTimeSeconds() < until;
        if (file is null || !unexpired)
        {
            context.Response.StatusCode = 404;
            return;
        }
        context.Response.ContentType = file.ContentType;
        await context.Response.Body.WriteAsync(file.Bytes).ConfigureAwait(false);
    }

    private async Task SentFileAsync(HttpContext context, string[] path)
    {
        Driving.SentFile? file = null;
        lock (realm.Gate)
        {
            if (path.Length == 5 && ulong.TryParse(path[3], out var id)) realm.Sent.TryGetValue(id, out file);
            realm.Fetched++;
        }
        if (file is null)
        {
            context.Response.StatusCode = 404;
            return;
        }
        context.Response.ContentType = file.ContentType;
        await context.Response.Body.WriteAsync(file.Bytes).ConfigureAwait(false);
    }
}
