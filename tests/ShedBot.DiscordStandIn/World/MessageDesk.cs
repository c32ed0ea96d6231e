using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Takes messages in, changes and removes them, and tells the sessions. Call under the realm's lock.</summary>
internal static class MessageDesk
{
    private static readonly TimeSpan NonceMemory = TimeSpan.FromMinutes(5);

    public static Message Post(Realm realm, Channel channel, Person author, Draft draft, Setting? setting = null)
    {
        setting ??= new Setting();
        if (RememberedBy(realm, channel, author, draft) is { } earlier)
            return earlier;
        var message = new Message(setting.Id ?? realm.Ids.Next(), channel, author)
        {
            Flags = (draft.Flags & setting.SettableFlags) | (setting.MayBeEmpty ? MessageFlags.Loading : 0),
            Answers = setting.Answers,
            Reference = setting.Reference ?? ReferenceOf(realm, channel, author, draft),
            Nonce = draft.Body.Of("nonce")?.AsNode(),
        };
        message.Type = setting.Type ?? (message.Reference is null ? MessageType.Default : MessageType.Reply);
        RefuseMixing(message.ComponentsV2, draft);
        Take(realm, message, draft, edit: false);
        if (!setting.MayBeEmpty)
            RefuseEmpty(message);
        var mayRingAll = channel.Guild is not null && RightsOf.In(channel, author).HasFlag(Rights.MentionEveryone);
        message.Pings = Mentions.Of(WordsOf(message), draft.Body.Of("allowed_mentions"), setting.Answers is not null, message.Reference, channel.Guild, mayRingAll);
        ThreadDesk.Spoken(realm, channel, author, message, setting.Uncounted);
        channel.Messages.Add(message);
        realm.Posted?.Invoke(message);
        if (!message.Ephemeral)
            realm.Emit("MESSAGE_CREATE", Intents.MessagesOf(channel), RenderMessage.ForGateway(realm, message), channel.Guild, channel, message);
        realm.Changed();
        return message;
    }

    /// <summary>Refuses a draft that could not be posted, before anything is told of it.</summary>
    public static void RefuseIfBad(Realm realm, Channel channel, Draft draft)
    {
        var trial = new Message(0, channel, realm.Bot) { Flags = draft.Flags & MessageFlags.ComponentsV2 };
        RefuseMixing(trial.ComponentsV2, draft);
        Take(realm, trial, draft, edit: false);
        RefuseEmpty(trial);
    }

    public static void Edit(Realm realm, Message message, Draft draft, bool announce = true)
    {
        var wasLoading = message.Loading;
        message.Earlier.Add(new Revision(message.Content, message.Components.ToJsonString(), message.Embeds.ToJsonString(), message.Attachments.Count, realm.Now));
        var v2 = message.ComponentsV2 || (draft.Flags & MessageFlags.ComponentsV2) != 0;
        RefuseMixing(v2, draft);
        if (draft.Has("flags"))
            message.Flags = (message.Flags & ~MessageFlags.SuppressEmbeds) | (draft.Flags & MessageFlags.SuppressEmbeds);
        if (v2)
            message.Flags |= MessageFlags.ComponentsV2;
        Take(realm, message, draft, edit: true);
        RefuseEmpty(message);
        message.Flags &= ~MessageFlags.Loading;
        var words = WordsOf(message);
        var pings = Mentions.Of(words, draft.Body.Of("allowed_mentions"), message.Answers is not null, null, message.Channel.Guild, mayRingAll: false);
        // Only what completes a deferred answer rings; an edit of what stands already does not.
        if (wasLoading)
            message.Pings = pings;
        else
            message.EditedAt = realm.Now;
        if (announce && !message.Ephemeral)
            realm.Emit("MESSAGE_UPDATE", Intents.MessagesOf(message.Channel), RenderMessage.ForGateway(realm, message), message.Channel.Guild, message.Channel, message);
        realm.Changed();
    }

    public static void Delete(Realm realm, Message message)
    {
        message.Deleted = true;
        if (!message.Ephemeral)
        {
            var gone = new JsonObject { ["id"] = message.Id.Text(), ["channel_id"] = message.Channel.Id.Text() };
            if (message.Channel.Guild is { } guild)
                gone["guild_id"] = guild.Id.Text();
            realm.Emit("MESSAGE_DELETE", Intents.MessagesOf(message.Channel), gone, message.Channel.Guild, message.Channel);
        }
        realm.Changed();
    }

    public static string WordsOf(Message m) => m.ComponentsV2 ? ComponentTree.Words(m.Components) : m.Content;

    private static void Take(Realm realm, Message message, Draft draft, bool edit)
    {
        if (draft.Has("content"))
            message.Content = draft.Content ?? "";
        if (draft.Has("attachments") || draft.Files.Count > 0 || !edit)
            message.Attachments = Filing.Take(realm, message, draft, edit);
        JsonObject? Media(string name) => message.Attachments.Find(a => a.FileName == name) is { } file ? Attachments.AsMedia(realm, message, file) : null;
        if (draft.Has("embeds"))
            message.Embeds = Filing.Embeds(draft.Body.Of("embeds").AsArray(), Media);
        if (draft.Has("components"))
        {
            message.Components = draft.Body.Of("components").AsArray();
            ComponentTree.Finish(message.Components, Media);
        }
    }

    private static void RefuseMixing(bool v2, Draft draft)
    {
        var classic = draft.Content is { Length: > 0 } || draft.Body.Of("embeds").AsItems().Any()
            || draft.Body.Of("poll") is { ValueKind: JsonValueKind.Object } || draft.Body.Of("sticker_ids").AsItems().Any();
        if (v2 && classic)
            throw Refusal.BadForm("content, embeds, poll and sticker_ids cannot be used with the components flag");
        if (!v2 && ComponentTree.All(draft.Body.Of("components").AsArray()).Any(p => ComponentTree.TypeOf(p) is >= 9 and not 18))
            throw Refusal.BadForm("these components need the components flag");
    }

    private static void RefuseEmpty(Message m)
    {
        if (m.Content.Length == 0 && m.Embeds.Count == 0 && m.Attachments.Count == 0 && (m.Components.Count == 0 || !m.ComponentsV2))
            throw Refusal.Empty();
    }

    private static Message? RememberedBy(Realm realm, Channel channel, Person author, Draft draft)
    {
        if (draft.Body.Of("enforce_nonce").AsFlag() != true || draft.Body.Of("nonce") is not { ValueKind: JsonValueKind.String or JsonValueKind.Number } nonce)
            return null;
        return channel.Messages.FindLast(m => m.Author == author && m.Nonce?.ToString() == nonce.ToString()
            && realm.Now - Snowflakes.MadeAt(m.Id) < NonceMemory);
    }

    private static Message? ReferenceOf(Realm realm, Channel channel, Person author, Draft draft)
    {
        var reference = draft.Body.Of("message_reference");
        if (reference.Of("message_id").AsId() is not { } id)
            return null;
        if (!RightsOf.In(channel, author).HasFlag(Rights.ReadMessageHistory))
            throw Refusal.ReplyNeedsHistory();
        if (channel.Find(id) is { Ephemeral: false } found)
            return found;
        if (reference.Of("fail_if_not_exists").AsFlag() == false)
            return null;
        throw Refusal.BadForm("message_reference: MESSAGE_REFERENCE_UNKNOWN_MESSAGE");
    }
}
