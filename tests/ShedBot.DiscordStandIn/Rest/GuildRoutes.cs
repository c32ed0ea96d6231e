using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Facts of a guild.</summary>
internal static class GuildRoutes
{
    public static void Add(RouteTable table)
    {
        table.Add("GET", "/guilds/{guild_id}", c => Reply.Ok(RenderGuild.Facts(c.Guild())));
        table.Add("GET", "/guilds/{guild_id}/channels", Channels);
        table.Add("GET", "/guilds/{guild_id}/roles", c => Reply.Ok(Render.Roles(c.Guild())));
        table.Add("GET", "/guilds/{guild_id}/members/{user_id}", Member);
        table.Add("GET", "/users/@me/guilds", Mine);
        table.Add("DELETE", "/users/@me/guilds/{guild_id}", Leave);
    }

    private static Reply Channels(RestCall c) =>
        Reply.Ok(Wire.ArrayOf(c.Guild().Channels.Where(x => x.Thread is null && !x.Deleted).Select(RenderPlaces.Channel)));

    private static Reply Member(RestCall c)
    {
        var guild = c.Guild();
        var person = c.PersonOf("user_id");
        return guild.Members.TryGetValue(person.Id, out var member) ? Reply.Ok(Render.Member(member)) : throw Refusal.UnknownMember();
    }

    private static Reply Mine(RestCall c) => Reply.Ok(Wire.ArrayOf(c.Realm.Guilds.Values.Where(g => g.BotIsIn).Select(g => (JsonNode)new JsonObject
    {
        ["id"] = g.Id.Text(),
        ["name"] = g.Name,
        ["icon"] = null,
        ["banner"] = null,
        ["owner"] = false,
        ["permissions"] = RightsOf.In(g, c.Realm.Bot).Bits(),
        ["features"] = new JsonArray(),
    })));

    private static Reply Leave(RestCall c)
    {
        GuildDesk.RemoveBot(c.Realm, c.Guild());
        return Reply.Empty;
    }
}
