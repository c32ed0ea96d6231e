using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Ordinary messages: send, read, change, remove.</summary>
internal static class MessageRoutes
{
    public static void Add(RouteTable table)
    {
        const string many = "/channels/{channel_id}/messages", one = many + "/{message_id}";
        table.Add("POST", many, Send);
        table.Add("GET", many, List);
        // Reading and changing one message share a bucket, so that a client that keys on the route alone is found out.
        table.Add("GET", one, c => Reply.Ok(Told(c, c.Message(Readable(c)))), "one-message");
        table.Add("PATCH", one, Change, "one-message");
        table.Add("DELETE", one, Remove);
        table.Add("POST", many + "/bulk-delete", RemoveMany);
        table.Add("PUT", many + "/pins/{message_id}", c => Pin(c, true));
        table.Add("DELETE", many + "/pins/{message_id}", c => Pin(c, false));
        table.Add("POST", "/channels/{channel_id}/typing", c => { c.Channel(); return Reply.Empty; });
    }

    private static JsonObject Told(RestCall c, Message m) => Blanking.ForRest(c.Realm, m);

    private static Channel Readable(RestCall c)
    {
        var channel = c.Channel();
        c.Need(channel, Rights.ReadMessageHistory);
        return channel;
    }

    private static Reply Send(RestCall c)
    {
        var channel = c.Channel();
        if (channel.Kind is ChannelKind.Forum or ChannelKind.Category)
            throw Refusal.NotInThisKind();
        RefuseUnwelcome(channel);
        c.Need(channel, channel.Thread is null ? Rights.SendMessages : Rights.SendMessagesInThreads);
        NeedForContents(c, channel);
        ThreadDesk.RefuseIfLocked(c.Realm, channel, c.Realm.Bot);
        return Reply.Ok(Told(c, MessageDesk.Post(c.Realm, channel, c.Realm.Bot, c.Draft)));
    }

    /// <summary>Files and embeds need rights of their own.</summary>
    public static void NeedForContents(RestCall c, Channel channel)
    {
        if (c.Files.Count > 0)
            c.Need(channel, Rights.AttachFiles);
        if (c.Body.Of("embeds").AsItems().Any())
            c.Need(channel, Rights.EmbedLinks);
    }

    private static void RefuseUnwelcome(Channel channel)
    {
        if (channel.Recipient is { DirectMessages: DirectMessages.NoSharedServer })
            throw Refusal.NoSharedServer();
        if (channel.Recipient is { DirectMessages: not DirectMessages.Welcome })
            throw Refusal.CannotReach();
    }

    private static Reply List(RestCall c)
    {
        var channel = c.Channel();
        // Without the right to read history the platform answers an empty page, not a refusal.
        if (!c.Has(channel, Rights.ReadMessageHistory))
            return Reply.Ok(new JsonArray());
        var limit = int.TryParse(c.Asked("limit"), out var asked) ? asked : 50;
        if (limit is < 1 or > 100)
            throw Refusal.BadForm("limit: 1 to 100");
        var all = channel.Standing.Where(m => !m.Ephemeral);
        if (ulong.TryParse(c.Asked("after"), out var after))
            all = all.Where(m => m.Id > after).Take(limit).Reverse();
        else if (ulong.TryParse(c.Asked("before"), out var before))
            all = all.Where(m => m.Id < before).Reverse();
        else if (ulong.TryParse(c.Asked("around"), out var around))
            all = all.OrderBy(m => m.Id > around ? m.Id - around : around - m.Id).Take(limit).OrderByDescending(m => m.Id);
        else
            all = all.Reverse();
        return Reply.Ok(Wire.ArrayOf(all.Take(limit).Select(m => Told(c, m))));
    }

    private static Reply Change(RestCall c)
    {
        var channel = c.Channel();
        var message = c.Message(channel);
        if (message.Author != c.Realm.Bot)
            throw Refusal.NotByYou();
        ThreadDesk.RefuseIfShut(c.Realm, channel, c.Realm.Bot);
        if (c.Files.Count > 0)
            c.Need(channel, Rights.AttachFiles);
        MessageDesk.Edit(c.Realm, message, c.Draft);
        return Reply.Ok(Told(c, message));
    }

    private static Reply Remove(RestCall c)
    {
        var channel = c.Channel();
        var message = c.Message(channel);
        if (message.Author != c.Realm.Bot)
            c.Need(channel, Rights.ManageMessages);
        ThreadDesk.RefuseIfShut(c.Realm, channel, c.Realm.Bot);
        MessageDesk.Delete(c.Realm, message);
        return Reply.Empty;
    }

    private static Reply RemoveMany(RestCall c)
    {
        var channel = c.Channel();
        c.Need(channel, Rights.ManageMessages);
        var ids = c.Body.Of("messages").AsItems().Select(i => ((System.Text.Json.JsonElement?)i).AsId()).ToList();
        if (ids.Count is < 2 or > 100)
            throw Refusal.BadForm("messages: 2 to 100");
        foreach (var id in ids)
        {
            if (channel.Find(id ?? 0) is { Ephemeral: false } found)
                MessageDesk.Delete(c.Realm, found);
        }
        return Reply.Empty;
    }

    private static Reply Pin(RestCall c, bool pinned)
    {
        var channel = c.Channel();
        var message = c.Message(channel);
        c.Need(channel, Rights.PinMessages);
        ThreadDesk.RefuseIfShut(c.Realm, channel, c.Realm.Bot);
        message.Pinned = pinned;
        c.Realm.Changed();
        return Reply.Empty;
    }
}
