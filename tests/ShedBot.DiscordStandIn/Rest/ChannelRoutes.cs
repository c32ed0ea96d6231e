using System.Text.Json;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Reading, changing and removing channels and threads.</summary>
internal static class ChannelRoutes
{
    public static void Add(RouteTable table)
    {
        const string one = "/channels/{channel_id}";
        table.Add("GET", one, c => Reply.Ok(RenderPlaces.Channel(c.Channel())));
        table.Add("PATCH", one, Change);
        table.Add("DELETE", one, Remove);
    }

    private static Reply Change(RestCall c)
    {
        var channel = c.Channel();
        if (channel.Thread is not { } state)
            throw Refusal.MissingRights();
        var manages = c.Has(channel, Rights.ManageThreads);
        if ((c.Draft.Has("locked") || c.Draft.Has("rate_limit_per_user")) && !manages)
            throw Refusal.MissingRights();
        ThreadDesk.RefuseIfLocked(c.Realm, channel, c.Realm.Bot);
        var reopens = c.Body.Of("archived").AsFlag() == false;
        // Reopening needs no more than the right to talk there; all else is the maker's or a moderator's.
        var onlyReopens = reopens && c.Body is { } body && body.EnumerateObject().Count() == 1;
        if (!manages && state.Owner != c.Realm.Bot && !(onlyReopens && c.Has(channel, Rights.SendMessagesInThreads)))
            throw Refusal.MissingRights();
        if (state.Archived && !reopens)
            throw Refusal.Archived();
        Apply(c, channel, state);
        ThreadDesk.Updated(c.Realm, channel);
        return Reply.Ok(RenderPlaces.Thread(channel));
    }

    private static void Apply(RestCall c, Channel channel, ThreadFacts state)
    {
        if (c.Draft.Has("name"))
            channel.Name = c.Body.Of("name").AsText() is { Length: >= 1 and <= 100 } name ? name : throw Refusal.BadForm("name: 1 to 100 characters");
        ThreadRoutes.TakeWishes(c, channel);
        state.Locked = c.Body.Of("locked").AsFlag() ?? state.Locked;
        if (c.Draft.Has("applied_tags"))
        {
            state.AppliedTags.Clear();
            state.AppliedTags.AddRange(c.Body.Of("applied_tags").AsItems().Select(t => ((JsonElement?)t).AsId() ?? 0));
        }
        if (c.Body.Of("archived").AsFlag() is { } archived && archived != state.Archived)
        {
            state.Archived = archived;
            state.ArchiveChangedAt = c.Realm.Now;
        }
    }

    private static Reply Remove(RestCall c)
    {
        var channel = c.Channel();
        if (channel.Guild is null)
            return Reply.Ok(RenderPlaces.Channel(channel));
        // Even the maker of a thread may not remove it without this right.
        c.Need(channel, channel.Thread is null ? Rights.ManageChannels : Rights.ManageThreads);
        var last = RenderPlaces.Channel(channel);
        if (channel.Thread is null)
            channel.Deleted = true;
        else
            ThreadDesk.Delete(c.Realm, channel);
        return Reply.Ok(last);
    }
}
