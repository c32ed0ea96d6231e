using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>The application, its commands, and where the gateway is.</summary>
internal static class ApplicationRoutes
{
    public static void Add(RouteTable table)
    {
        table.Add("GET", "/applications/@me", c => Reply.Ok(Application(c.Realm)));
        table.Add("PATCH", "/applications/@me", c => Reply.Ok(Application(c.Realm)));
        // The older address of the same; one of the public clients asks there.
        table.Add("GET", "/oauth2/applications/@me", c => Reply.Ok(Application(c.Realm)));
        table.Add("GET", "/gateway", c => Reply.Ok(new JsonObject { ["url"] = Url(c.Realm) }));
        table.Add("GET", "/gateway/bot", c => Reply.Ok(GatewayBot(c.Realm)));
        table.Add("GET", "/applications/{application_id}/commands", c => List(c, 0));
        table.Add("PUT", "/applications/{application_id}/commands", c => Replace(c, 0));
        table.Add("GET", "/applications/{application_id}/guilds/{guild_id}/commands", c => List(c, c.Guild().Id));
        table.Add("PUT", "/applications/{application_id}/guilds/{guild_id}/commands", c => Replace(c, c.Guild().Id));
        table.Add("GET", "/applications/{application_id}/guilds/{guild_id}/commands/{command_id}/permissions", _ => throw new Refusal(404, 10066, "Unknown application command permissions"));
    }

    private static string Url(Realm realm) => "ws" + realm.Address["http".Length..] + "/";

    private static JsonObject GatewayBot(Realm realm) => new()
    {
        ["url"] = Url(realm),
        ["shards"] = 1,
        ["session_start_limit"] = new JsonObject
        {
            ["total"] = 1000,
            ["remaining"] = Math.Max(0, 1000 - realm.Hub.Identifies),
            ["reset_after"] = 14400000,
            ["max_concurrency"] = 1,
        },
    };

    private static JsonObject Application(Realm realm) => new()
    {
        ["id"] = realm.ApplicationId.Text(),
        ["name"] = "Invented helper",
        ["icon"] = null,
        ["description"] = "An application that exists only in the stand-in.",
        ["type"] = null,
        ["bot"] = Render.User(realm.Bot),
        ["bot_public"] = true,
        ["bot_require_code_grant"] = false,
        ["verify_key"] = new string('0', 64),
        // Bits of switched-on intents of a small application: members 15, content 19 (from memory).
        ["flags"] = Flags(realm),
        ["flags_new"] = Flags(realm).ToString(System.Globalization.CultureInfo.InvariantCulture),
        ["tags"] = new JsonArray(),
        ["redirect_uris"] = new JsonArray(),
        ["interactions_endpoint_url"] = null,
        ["role_connections_verification_url"] = null,
        ["owner"] = Render.User(realm.Bot),
        ["approximate_guild_count"] = realm.Guilds.Values.Count(g => g.BotIsIn),
        ["approximate_user_install_count"] = 0,
        ["approximate_user_authorization_count"] = 0,
        ["explicit_content_filter"] = 0,
        ["team"] = null,
        ["eligible_oauth2_scopes"] = new JsonArray("bot", "applications.commands"),
    };

    private static int Flags(Realm realm) =>
        ((realm.Options.AllowedPrivilegedIntents & Gateway.Intents.GuildMembers) != 0 ? 1 << 15 : 0)
        | ((realm.Options.AllowedPrivilegedIntents & Gateway.Intents.MessageContent) != 0 ? 1 << 19 : 0);

    private static void RefuseOthers(RestCall c)
    {
        if (c.Id("application_id") != c.Realm.ApplicationId)
            throw new Refusal(403, 20012, "You are not authorized to perform this action on this application");
    }

    private static Reply List(RestCall c, ulong guildId)
    {
        RefuseOthers(c);
        return Reply.Ok(Wire.ArrayOf(c.Realm.Commands.In(guildId).Select(x => Told(x, c.AskedTrue("with_localizations")))));
    }

    private static Reply Replace(RestCall c, ulong guildId)
    {
        RefuseOthers(c);
        if (c.Body is not { ValueKind: System.Text.Json.JsonValueKind.Array or System.Text.Json.JsonValueKind.Null })
            throw Refusal.BadForm("a list of commands is needed");
        return Reply.Ok(Wire.ArrayOf(c.Realm.Commands.Replace(c.Realm, guildId, c.Body.AsItems()).Select(x => Told(x, withLocalizations: true))));
    }

    private static JsonNode Told(JsonObject command, bool withLocalizations)
    {
        var told = command.DeepClone();
        if (!withLocalizations)
            Strip(told);
        return told;
    }

    // A listing leaves the translations out unless asked for them.
    private static void Strip(JsonNode? at)
    {
        if (at is JsonArray list)
        {
            foreach (var item in list)
                Strip(item);
        }
        if (at is not JsonObject part)
            return;
        part.Remove("name_localizations");
        part.Remove("description_localizations");
        Strip(part["options"]);
        Strip(part["choices"]);
    }
}
