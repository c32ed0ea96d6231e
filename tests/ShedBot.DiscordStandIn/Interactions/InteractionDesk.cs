using System.Security.Cryptography;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>Tells the bot of what a member did. Call under the realm's lock.</summary>
internal static class InteractionDesk
{
    private const int LongestToken = 96;

    public static Interaction Command(Realm realm, Person person, Channel channel, JsonObject command, JsonArray options, JsonObject? resolved, ulong? targetId)
    {
        var type = ComponentTree.TypeOf(command);
        var data = new JsonObject { ["id"] = command["id"]!.ToString(), ["name"] = command["name"]!.ToString(), ["type"] = type };
        if (command["guild_id"] is { } guildId)
            data["guild_id"] = guildId.ToString();
        if (options.Count > 0)
            data["options"] = options;
        if (resolved is not null)
            data["resolved"] = resolved;
        if (targetId is { } target)
            data["target_id"] = target.Text();
        var interaction = New(realm, InteractionType.Command, person, channel, null, type);
        return Raise(realm, interaction, data);
    }

    public static Interaction Autocomplete(Realm realm, Person person, Channel channel, JsonObject command, JsonArray options)
    {
        var data = new JsonObject { ["id"] = command["id"]!.ToString(), ["name"] = command["name"]!.ToString(), ["type"] = 1, ["options"] = options };
        return Raise(realm, New(realm, InteractionType.Autocomplete, person, channel, null, 1), data);
    }

    public static Interaction Component(Realm realm, Person person, Message source, int componentType, string customId, int partId, JsonArray? values, JsonObject? resolved)
    {
        var data = new JsonObject { ["custom_id"] = customId, ["component_type"] = componentType, ["id"] = partId };
        if (values is not null)
            data["values"] = values;
        if (resolved is not null)
            data["resolved"] = resolved;
        return Raise(realm, New(realm, InteractionType.Component, person, source.Channel, source, 1), data);
    }

    public static Interaction Modal(Realm realm, Person person, Interaction opener, string customId, JsonArray components)
    {
        var data = new JsonObject { ["custom_id"] = customId, ["components"] = components };
        return Raise(realm, New(realm, InteractionType.Modal, person, opener.Channel, opener.Source, 1), data);
    }

    private static Interaction New(Realm realm, int type, Person person, Channel channel, Message? source, int commandType)
    {
        var token = Convert.ToBase64String(RandomNumberGenerator.GetBytes(LongestToken)).Replace('+', 'A').Replace('/', 'B').TrimEnd('=');
        var interaction = new Interaction(realm.Ids.Next(), token, type, person, channel, realm.Now) { Source = source, CommandType = commandType };
        realm.Interactions.Add(interaction.Id, interaction);
        return interaction;
    }

    private static Interaction Raise(Realm realm, Interaction i, JsonObject data)
    {
        var channel = i.Channel;
        var payload = new JsonObject
        {
            ["id"] = i.Id.Text(),
            ["application_id"] = realm.ApplicationId.Text(),
            ["type"] = i.Type,
            ["token"] = i.Token,
            ["version"] = 1,
            ["data"] = data,
            ["channel_id"] = channel.Id.Text(),
            ["channel"] = RenderPlaces.Partial(channel, i.Person),
            ["app_permissions"] = RightsOf.In(channel, realm.Bot).Bits(),
            ["locale"] = i.Person.Locale,
            ["entitlements"] = new JsonArray(),
            ["authorizing_integration_owners"] = i.Owners(),
            ["context"] = channel.Guild is null ? 1 : 0,
            ["attachment_size_limit"] = 10 * 1024 * 1024,
        };
        if (i.Source is { } source)
            payload["message"] = RenderMessage.Message(realm, source);
        if (channel.Guild is not { } guild)
        {
            payload["user"] = Render.User(i.Person);
        }
        else
        {
            payload["guild_id"] = guild.Id.Text();
            payload["guild_locale"] = guild.PreferredLocale;
            payload["guild"] = new JsonObject { ["id"] = guild.Id.Text(), ["locale"] = guild.PreferredLocale, ["features"] = new JsonArray() };
            payload["member"] = Invoker(guild, channel, i.Person);
        }
        // Interactions come whatever the bot was asked to hear of and whether or not it may see the channel.
        realm.Hub.Dispatch(new GatewayEvent("INTERACTION_CREATE", Intents.None, payload, channel.Guild?.Id, channel.Id, null));
        realm.Changed();
        return i;
    }

    private static JsonObject Invoker(Guild guild, Channel channel, Person person)
    {
        var member = Render.Member(guild.Members[person.Id]);
        member["permissions"] = RightsOf.In(channel, person).Bits();
        return member;
    }
}
