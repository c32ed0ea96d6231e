using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>One request as its handler sees it.</summary>
internal sealed record RestCall(Realm Realm, IReadOnlyDictionary<string, string> Values, IReadOnlyDictionary<string, string> Query, JsonElement? Body, IReadOnlyList<Upload> Files)
{
    public Draft Draft => new(Body, Files);

    /// <summary>An id of the path; 0 when it is not one, which nothing has.</summary>
    public ulong Id(string name) => ulong.TryParse(Values[name], out var id) ? id : 0;

    public string? Asked(string name) => Query.GetValueOrDefault(name);

    public bool AskedTrue(string name) => Asked(name) is "true" or "True" or "1";

    /// <summary>The channel of the path, if the bot may see it.</summary>
    public Channel Channel()
    {
        var channel = Realm.Channel(Id("channel_id"));
        if (channel is null || channel.Guild is { BotIsIn: false })
            throw channel is null ? Refusal.UnknownChannel() : Refusal.MissingAccess();
        Need(channel, Rights.ViewChannel);
        return channel;
    }

    /// <summary>The message of the path, by the ordinary route: private answers are not there.</summary>
    public Message Message(Channel channel) =>
        channel.Find(Id("message_id")) is { Ephemeral: false } found ? found : throw Refusal.UnknownMessage();

    public Guild Guild() => Realm.Guilds.GetValueOrDefault(Id("guild_id")) switch
    {
        null => throw Refusal.UnknownGuild(),
        { BotIsIn: false } => throw Refusal.MissingAccess(),
        var guild => guild,
    };

    public Person PersonOf(string name) => Realm.People.GetValueOrDefault(Id(name)) ?? throw Refusal.UnknownUser();

    public void Need(Channel channel, Rights rights)
    {
        var has = RightsOf.In(channel, Realm.Bot);
        if (!has.HasFlag(Rights.ViewChannel))
            throw Refusal.MissingAccess();
        if (!has.HasFlag(rights))
            throw Refusal.MissingRights();
    }

    public bool Has(Channel channel, Rights rights) => RightsOf.In(channel, Realm.Bot).HasFlag(rights);
}

/// <summary>What is answered: a status and perhaps JSON.</summary>
internal sealed record Reply(int Status, JsonNode? Body)
{
    public static readonly Reply Empty = new(204, null);

    public static Reply Ok(JsonNode body) => new(200, body);

    public static Reply Created(JsonNode body) => new(201, body);

    public static Reply Refused(Refusal why) => new(why.Status, new JsonObject { ["code"] = why.Code, ["message"] = why.Message });
}
