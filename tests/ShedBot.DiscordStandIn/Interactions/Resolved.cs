using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>The things that ids in an interaction stand for, told along with it.</summary>
internal static class Resolved
{
    public static JsonObject? Of(Realm realm, Guild? guild, IEnumerable<ulong> people, IEnumerable<Message> messages, IEnumerable<Channel> channels, IEnumerable<ulong> roles)
    {
        var resolved = new JsonObject();
        foreach (var id in people.Distinct())
        {
            Map(resolved, "users")[id.Text()] = Render.User(realm.People[id]);
            if (guild is not null && guild.Members.TryGetValue(id, out var member))
            {
                var partial = Render.MemberWithoutUser(member);
                partial["permissions"] = RightsOf.In(guild, member.Person).Bits();
                Map(resolved, "members")[id.Text()] = partial;
            }
        }
        foreach (var message in messages)
            Map(resolved, "messages")[message.Id.Text()] = RenderMessage.Message(realm, message);
        foreach (var channel in channels)
            Map(resolved, "channels")[channel.Id.Text()] = RenderPlaces.Partial(channel, realm.Bot);
        foreach (var role in roles)
            Map(resolved, "roles")[role.Text()] = Render.Role(guild!.RoleOf(role)!, guild.Roles.FindIndex(r => r.Id == role));
        return resolved.Count > 0 ? resolved : null;
    }

    /// <summary>Told by id, whatever kind each is.</summary>
    public static JsonObject? ByIds(Realm realm, Guild? guild, IEnumerable<ulong> ids)
    {
        var list = ids.Distinct().ToList();
        var resolved = Of(realm, guild,
            list.Where(realm.People.ContainsKey), [],
            list.Select(realm.Channel).OfType<Channel>(),
            list.Where(id => guild?.RoleOf(id) is not null));
        foreach (var file in list.Where(realm.Sent.ContainsKey).Select(id => realm.Sent[id]))
            Map(resolved ??= [], "attachments")[file.Id.Text()] = Attachments.Render(realm, file);
        return resolved;
    }

    private static JsonObject Map(JsonObject resolved, string name)
    {
        if (resolved[name] is JsonObject known)
            return known;
        var made = new JsonObject();
        resolved[name] = made;
        return made;
    }
}
