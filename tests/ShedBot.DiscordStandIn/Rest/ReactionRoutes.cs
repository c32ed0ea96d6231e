using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Reactions of the bot.</summary>
internal static class ReactionRoutes
{
    public static void Add(RouteTable table)
    {
        const string own = "/channels/{channel_id}/messages/{message_id}/reactions/{emoji_name}/@me";
        table.Add("PUT", own, React);
        table.Add("DELETE", own, Unreact);
    }

    private static Reply React(RestCall c)
    {
        var channel = c.Channel();
        var message = c.Message(channel);
        var emoji = c.Values["emoji_name"];
        c.Need(channel, Rights.ReadMessageHistory);
        if (!message.Reactions.ContainsKey(emoji))
            c.Need(channel, Rights.AddReactions);
        ThreadDesk.RefuseIfShut(c.Realm, channel, c.Realm.Bot);
        if (!message.Reactions.ContainsKey(emoji) && message.Reactions.Count >= 20)
            throw new Refusal(400, 30010, "Maximum number of reactions reached (20)");
        // A plain word is no emoji: either a sign outside ASCII, or name:id of a guild's own.
        if (emoji.All(char.IsAscii) && !emoji.Contains(':'))
            throw new Refusal(400, 10014, "Unknown Emoji");
        if (!message.Reactions.TryGetValue(emoji, out var who))
            message.Reactions[emoji] = who = [];
        if (who.Add(c.Realm.Bot.Id))
            Tell(c.Realm, message, c.Realm.Bot, emoji, "MESSAGE_REACTION_ADD");
        return Reply.Empty;
    }

    private static Reply Unreact(RestCall c)
    {
        var message = c.Message(c.Channel());
        if (message.Reactions.GetValueOrDefault(c.Values["emoji_name"])?.Remove(c.Realm.Bot.Id) == true)
            Tell(c.Realm, message, c.Realm.Bot, c.Values["emoji_name"], "MESSAGE_REACTION_REMOVE");
        return Reply.Empty;
    }

    public static void Tell(Realm realm, Message message, Person who, string emoji, string name)
    {
        var data = new JsonObject
        {
            ["user_id"] = who.Id.Text(),
            ["channel_id"] = message.Channel.Id.Text(),
            ["message_id"] = message.Id.Text(),
            ["emoji"] = RenderMessage.Emoji(emoji),
            ["burst"] = false,
            ["type"] = 0,
        };
        if (message.Channel.Guild is { } guild)
            data["guild_id"] = guild.Id.Text();
        realm.Emit(name, Intents.ReactionsOf(message.Channel), data, message.Channel.Guild, message.Channel);
        realm.Changed();
    }
}
