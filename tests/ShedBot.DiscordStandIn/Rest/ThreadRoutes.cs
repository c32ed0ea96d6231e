using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Starting threads and forum posts, and listing them.</summary>
internal static class ThreadRoutes
{
    public static void Add(RouteTable table)
    {
        table.Add("POST", "/channels/{channel_id}/messages/{message_id}/threads", FromMessage);
        table.Add("POST", "/channels/{channel_id}/threads", WithoutMessage);
        table.Add("GET", "/guilds/{guild_id}/threads/active", Active);
        table.Add("GET", "/channels/{channel_id}/threads/archived/public", c => Archived(c, t => t.Kind != ChannelKind.PrivateThread));
        table.Add("GET", "/channels/{channel_id}/users/@me/threads/archived/private",
            c => Archived(c, t => t.Kind == ChannelKind.PrivateThread && t.Thread!.Members.ContainsKey(c.Realm.Bot.Id)));
    }

    private static Reply FromMessage(RestCall c)
    {
        var channel = c.Channel();
        if (channel.Kind is not (ChannelKind.Text or ChannelKind.Announcement))
            throw new Refusal(400, 50024, "Cannot execute action on this channel type");
        var message = c.Message(channel);
        c.Need(channel, Rights.CreatePublicThreads);
        // The thread's id is the message's, so a second one cannot be; it stays so even after the thread is removed.
        if (message.StartedThread is not null)
            throw Refusal.HasThread();
        var kind = channel.Kind == ChannelKind.Announcement ? ChannelKind.AnnouncementThread : ChannelKind.PublicThread;
        var thread = ThreadDesk.Start(c.Realm, channel, c.Realm.Bot, kind, Name(c), message);
        TakeWishes(c, thread);
        thread.Messages.Add(new Message(c.Realm.Ids.Next(), thread, message.Author) { Type = MessageType.ThreadStarter, Reference = message });
        ThreadDesk.Announce(c.Realm, thread, message);
        return Reply.Created(Told(c, thread));
    }

    private static Reply WithoutMessage(RestCall c)
    {
        var channel = c.Channel();
        if (channel.Kind == ChannelKind.Forum)
            return ForumPost(c, channel);
        if (channel.Kind != ChannelKind.Text)
            throw new Refusal(400, 50024, "Cannot execute action on this channel type");
        // Left out, the kind is private: the platform's default, which surprises.
        var kind = c.Body.Of("type").AsNumber() switch
        {
            null or 12 => ChannelKind.PrivateThread,
            11 => ChannelKind.PublicThread,
            _ => throw Refusal.BadForm("type: 11 or 12 here"),
        };
        c.Need(channel, kind == ChannelKind.PublicThread ? Rights.CreatePublicThreads : Rights.CreatePrivateThreads);
        var thread = ThreadDesk.Start(c.Realm, channel, c.Realm.Bot, kind, Name(c));
        TakeWishes(c, thread);
        ThreadDesk.Announce(c.Realm, thread, from: null);
        if (kind == ChannelKind.PublicThread)
            ThreadDesk.Mark(c.Realm, channel, thread);
        return Reply.Created(Told(c, thread));
    }

    private static Reply ForumPost(RestCall c, Channel forum)
    {
        c.Need(forum, Rights.SendMessages);
        MessageRoutes.NeedForContents(c, forum);
        if (c.Body.Of("message") is not { ValueKind: System.Text.Json.JsonValueKind.Object } first)
            throw Refusal.BadForm("message: needed for a post in a forum");
        var tags = c.Body.Of("applied_tags").AsItems().Select(t => ((System.Text.Json.JsonElement?)t).AsId() ?? 0).ToList();
        if (tags.Count > 5 || tags.Exists(t => !forum.Tags.Exists(f => f.Id == t)))
            throw Refusal.BadForm("applied_tags: at most 5, all of this forum");
        if (tags.Count == 0 && (forum.Flags & 16) != 0)
            throw new Refusal(400, 40067, "A tag is required to create a forum post in this channel");
        var name = Name(c);
        var draft = new Draft(first, c.Files);
        // The post is tried on a thread nobody has heard of, so that a message refused leaves nothing behind.
        var thread = ThreadDesk.Start(c.Realm, forum, c.Realm.Bot, ChannelKind.PublicThread, name);
        thread.Thread!.AppliedTags.AddRange(tags);
        TakeWishes(c, thread);
        Message message;
        try
        {
            MessageDesk.RefuseIfBad(c.Realm, thread, draft);
            ThreadDesk.Announce(c.Realm, thread, from: null);
            message = MessageDesk.Post(c.Realm, thread, c.Realm.Bot, draft, new Setting
            {
                Id = thread.Id,
                Uncounted = true,
                SettableFlags = MessageFlags.SuppressEmbeds | MessageFlags.SuppressNotifications,
            });
        }
        catch (Refusal)
        {
            thread.Deleted = true;
            throw;
        }
        var told = Told(c, thread);
        told["message"] = RenderMessage.Message(c.Realm, message);
        return Reply.Created(told);
    }

    private static Reply Active(RestCall c)
    {
        var guild = c.Guild();
        return Listed(c, guild.Channels.Where(t => t.Thread is { Archived: false }), hasMore: null);
    }

    private static Reply Archived(RestCall c, Func<Channel, bool> which)
    {
        var channel = c.Channel();
        c.Need(channel, Rights.ReadMessageHistory);
        var limit = int.TryParse(c.Asked("limit"), out var asked) ? asked : 50;
        var before = DateTimeOffset.TryParse(c.Asked("before"), System.Globalization.CultureInfo.InvariantCulture, out var at) ? at : DateTimeOffset.MaxValue;
        var found = channel.Guild!.Channels
            .Where(t => t.Parent == channel && t.Thread is { Archived: true } state && state.ArchiveChangedAt < before && which(t))
            .OrderByDescending(t => t.Thread!.ArchiveChangedAt).ToList();
        return Listed(c, found.Take(limit), found.Count(t => !t.Deleted) > limit);
    }

    private static Reply Listed(RestCall c, IEnumerable<Channel> threads, bool? hasMore)
    {
        var seen = threads.Where(t => !t.Deleted && c.Has(t, Rights.ViewChannel)).ToList();
        var list = new JsonObject
        {
            ["threads"] = Wire.ArrayOf(seen.Select(RenderPlaces.Thread)),
            ["members"] = Wire.ArrayOf(seen.Where(t => t.Thread!.Members.ContainsKey(c.Realm.Bot.Id)).Select(t => RenderPlaces.ThreadMember(t, c.Realm.Bot.Id))),
            ["has_more"] = hasMore ?? false,
        };
        return Reply.Ok(list);
    }

    private static string Name(RestCall c) =>
        c.Body.Of("name").AsText() is { Length: >= 1 and <= 100 } name ? name : throw Refusal.BadForm("name: 1 to 100 characters");

    public static void TakeWishes(RestCall c, Channel thread)
    {
        var state = thread.Thread!;
        if (c.Body.Of("auto_archive_duration").AsNumber() is { } minutes)
            state.AutoArchiveMinutes = minutes is 60 or 1440 or 4320 or 10080 ? (int)minutes : throw Refusal.BadForm("auto_archive_duration: 60, 1440, 4320 or 10080");
        state.Invitable = c.Body.Of("invitable").AsFlag() ?? state.Invitable;
        state.SlowSeconds = (int)(c.Body.Of("rate_limit_per_user").AsNumber() ?? state.SlowSeconds);
    }

    private static JsonObject Told(RestCall c, Channel thread)
    {
        var told = RenderPlaces.Thread(thread);
        told["member"] = RenderPlaces.ThreadMember(thread, c.Realm.Bot.Id);
        return told;
    }
}
