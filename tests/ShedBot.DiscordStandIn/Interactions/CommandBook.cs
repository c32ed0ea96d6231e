using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>The registered commands, global and per guild.</summary>
internal sealed class CommandBook
{
    private readonly Dictionary<ulong, List<JsonObject>> scopes = [];

    /// <summary>Global when the guild is 0.</summary>
    public IReadOnlyList<JsonObject> In(ulong guildId) => scopes.TryGetValue(guildId, out var found) ? found : [];

    /// <summary>Replaces all commands of a scope; one of the same name and type keeps its id.</summary>
    public IReadOnlyList<JsonObject> Replace(Realm realm, ulong guildId, IEnumerable<JsonElement> wanted)
    {
        var before = In(guildId);
        return scopes[guildId] = [.. wanted.Select(w => Registered(realm, guildId, before, (JsonObject)w.AsNode()!))];
    }

    /// <summary>The command a member would find: the guild's own first.</summary>
    public JsonObject? Find(ulong? guildId, int type, string name) =>
        In(guildId ?? 0).Concat(In(0)).FirstOrDefault(c => ComponentTree.TypeOf(c) == type && ComponentTree.TextOf(c, "name") == name);

    private static JsonObject Registered(Realm realm, ulong guildId, IReadOnlyList<JsonObject> before, JsonObject command)
    {
        command["type"] ??= 1;
        var same = before.FirstOrDefault(b => ComponentTree.TypeOf(b) == ComponentTree.TypeOf(command) && b["name"]!.ToString() == command["name"]?.ToString());
        command["id"] = same?["id"]?.ToString() ?? realm.Ids.Next().Text();
        command["application_id"] = realm.ApplicationId.Text();
        command["version"] = realm.Ids.Next().Text();
        command["description"] ??= "";
        // Clients send the bits as text or as a number; the platform tells them as text.
        command["default_member_permissions"] = command["default_member_permissions"]?.ToString();
        command["nsfw"] ??= false;
        command["dm_permission"] ??= true;
        if (guildId != 0)
        {
            command["guild_id"] = guildId.Text();
            return command;
        }
        command["contexts"] ??= new JsonArray(0, 1, 2);
        command["integration_types"] ??= new JsonArray(0);
        return command;
    }
}
