using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

// Building the world: people, guilds, roles, channels. Everything here is invented by the test that calls it.
public sealed partial class StandIn
{
    public Person AddPerson(string name, bool isBot = false)
    {
        lock (realm.Gate)
        {
            var person = new Person(realm.Ids.Next(), name, isBot);
            realm.People.Add(person.Id, person);
            return person;
        }
    }

    /// <summary>Makes a guild the bot is in, or gets the bot added to one while it is connected.</summary>
    /// <param name="owner">An invented owner is made when null.</param>
    public Task<Guild> AddGuildAsync(string name, Person? owner = null)
    {
        owner ??= AddPerson($"owner of {name}");
        lock (realm.Gate)
        {
            var guild = GuildDesk.Add(realm, name, owner);
            GuildDesk.Created(realm, guild);
            return Task.FromResult(guild);
        }
    }

    /// <summary>The bot is removed from a guild, or (unavailable) the guild suffers an outage.</summary>
    public Task RemoveGuildAsync(Guild guild, bool unavailable = false)
    {
        lock (realm.Gate)
        {
            if (unavailable)
                GuildDesk.SetUnavailable(realm, guild, true);
            else
                GuildDesk.RemoveBot(realm, guild);
        }
        return Task.CompletedTask;
    }

    /// <summary>An outage ends, or the bot is invited again.</summary>
    public Task RestoreGuildAsync(Guild guild)
    {
        lock (realm.Gate)
        {
            guild.BotIsIn = true;
            GuildDesk.Join(realm, guild, realm.Bot);
            GuildDesk.SetUnavailable(realm, guild, false);
        }
        return Task.CompletedTask;
    }

    public Member Join(Guild guild, Person person, params Role[] roles)
    {
        lock (realm.Gate)
        {
            var member = GuildDesk.Join(realm, guild, person);
            member.RoleIds.AddRange(roles.Select(r => r.Id).Except(member.RoleIds));
            var told = Render.Member(member);
            told["guild_id"] = guild.Id.Text();
            realm.Emit("GUILD_MEMBER_ADD", Intents.GuildMembers, told, guild);
            return member;
        }
    }

    /// <summary>A role is taken from a member.</summary>
    public void TakeRole(Guild guild, Person person, Role role)
    {
        lock (realm.Gate)
            guild.Members[person.Id].RoleIds.Remove(role.Id);
    }

    public void Leave(Guild guild, Person person)
    {
        lock (realm.Gate)
        {
            if (guild.Members.Remove(person.Id))
                realm.Emit("GUILD_MEMBER_REMOVE", Intents.GuildMembers, new() { ["guild_id"] = guild.Id.Text(), ["user"] = Render.User(person) }, guild);
        }
    }

    public Role AddRole(Guild guild, string name, Rights rights = Rights.None)
    {
        lock (realm.Gate)
        {
            var role = new Role(realm.Ids.Next(), name, rights);
            guild.Roles.Add(role);
            realm.Emit("GUILD_ROLE_CREATE", Intents.Guilds, new() { ["guild_id"] = guild.Id.Text(), ["role"] = Render.Role(role, guild.Roles.Count - 1) }, guild);
            return role;
        }
    }

    public Channel AddTextChannel(Guild guild, string name) => AddChannel(guild, name, ChannelKind.Text, []);

    /// <summary>A forum with tags of these names; posts need a tag only when its <see cref="Channel.Flags"/> say so.</summary>
    public Channel AddForum(Guild guild, string name, params string[] tags) => AddChannel(guild, name, ChannelKind.Forum, tags);

    public Channel AddChannel(Guild guild, string name, ChannelKind kind, IReadOnlyList<string> tags)
    {
        lock (realm.Gate)
        {
            var channel = new Channel(realm.Ids.Next(), kind, name, guild, null);
            channel.Tags.AddRange(tags.Select(t => new ForumTag(realm.Ids.Next(), t)));
            realm.Add(channel);
            realm.Emit("CHANNEL_CREATE", Intents.Guilds, RenderPlaces.Channel(channel), guild, channel);
            return channel;
        }
    }

    /// <summary>Sets what a person may and may not do in a channel, over what their roles say.</summary>
    public void SetRights(Channel channel, Person person, Rights allow = Rights.None, Rights deny = Rights.None) =>
        SetOverwrite(channel, new Overwrite(person.Id, true, allow, deny));

    /// <summary>The same for a role.</summary>
    public void SetRights(Channel channel, Role role, Rights allow = Rights.None, Rights deny = Rights.None) =>
        SetOverwrite(channel, new Overwrite(role.Id, false, allow, deny));

    /// <summary>What a person may do in a channel.</summary>
    public Rights RightsIn(Channel channel, Person person)
    {
        lock (realm.Gate)
            return RightsOf.In(channel, person);
    }

    /// <summary>The direct channel between the bot and a person; the same one each time.</summary>
    public Channel DirectChannel(Person person)
    {
        lock (realm.Gate)
            return UserRoutes.Opened(realm, person);
    }

    private void SetOverwrite(Channel channel, Overwrite overwrite)
    {
        lock (realm.Gate)
        {
            channel.Overwrites.RemoveAll(o => o.TargetId == overwrite.TargetId);
            channel.Overwrites.Add(overwrite);
            realm.Emit("CHANNEL_UPDATE", Intents.Guilds, RenderPlaces.Channel(channel), channel.Guild, channel);
        }
    }
}
