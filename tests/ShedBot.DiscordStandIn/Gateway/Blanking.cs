using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Empties what a bot without the message-content intent may not read.</summary>
internal static class Blanking
{
    /// <summary>Own messages, direct messages, messages naming the bot in their words, and replies that ring for the bot under one of its
    /// ordinary messages (not under an answer to an interaction) are left readable.</summary>
    public static bool Readable(Message m, Person bot) =>
        m.Author == bot
        || m.Channel.Guild is null
        || Mentions.Names(MessageDesk.WordsOf(m), bot.Id)
        || (m.Reference is { Answers: null } about && about.Author == bot && m.Type == MessageType.Reply && m.Pings.People.Contains(bot.Id));

    public static JsonObject Blank(JsonObject message)
    {
        var blank = (JsonObject)message.DeepClone();
        blank["content"] = "";
        foreach (var list in new[] { "embeds", "attachments", "components" })
            blank[list] = new JsonArray();
        blank.Remove("poll");
        return blank;
    }

    /// <summary>The message as REST tells it to a bot that may not be allowed to read it.</summary>
    public static JsonObject ForRest(Realm realm, Message m)
    {
        var json = RenderMessage.Message(realm, m);
        return realm.Options.AllowedPrivilegedIntents.HasBit(Intents.MessageContent) || Readable(m, realm.Bot) ? json : Blank(json);
    }

    public static bool HasBit(this long bits, long bit) => (bits & bit) != 0;
}
