using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Guilds come, go, fail and come back. Call under the realm's lock.</summary>
internal static class GuildDesk
{
    public static Guild Add(Realm realm, string name, Person owner)
    {
        var guild = new Guild(realm.Ids.Next(), name, owner);
        guild.Roles.Add(new Role(guild.Id, "@everyone", Rights.Ordinary));
        var own = new Role(realm.Ids.Next(), realm.Bot.Name, realm.Options.BotRights);
        guild.Roles.Add(own);
        realm.Guilds.Add(guild.Id, guild);
        Join(realm, guild, owner);
        Join(realm, guild, realm.Bot).RoleIds.Add(own.Id);
        return guild;
    }

    public static Member Join(Realm realm, Guild guild, Person person)
    {
        if (guild.Members.TryGetValue(person.Id, out var known))
            return known;
        return guild.Members[person.Id] = new Member(person, realm.Now);
    }

    public static void Created(Realm realm, Guild guild) =>
        realm.Emit("GUILD_CREATE", Intents.Guilds, RenderGuild.Created(guild, realm.Bot), guild);

    /// <summary>The bot is no longer in it: the notice has no <c>unavailable</c>.</summary>
    public static void RemoveBot(Realm realm, Guild guild)
    {
        guild.BotIsIn = false;
        guild.Members.Remove(realm.Bot.Id);
        realm.Emit("GUILD_DELETE", Intents.Guilds, new JsonObject { ["id"] = guild.Id.Text() }, guild);
        realm.Changed();
    }

    /// <summary>An outage, or its end.</summary>
    public static void SetUnavailable(Realm realm, Guild guild, bool unavailable)
    {
        guild.Unavailable = unavailable;
        if (unavailable)
            realm.Emit("GUILD_DELETE", Intents.Guilds, RenderGuild.Unavailable(guild), guild);
        else
            Created(realm, guild);
    }
}
