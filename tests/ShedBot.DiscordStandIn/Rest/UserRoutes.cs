using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>The bot's own account and direct channels.</summary>
internal static class UserRoutes
{
    private static readonly TimeSpan OpenWindow = TimeSpan.FromMinutes(10);

    public static void Add(RouteTable table)
    {
        table.Add("GET", "/users/@me", c => Reply.Ok(Render.OwnUser(c.Realm.Bot)));
        table.Add("POST", "/users/@me/channels", Open);
    }

    private static Reply Open(RestCall c)
    {
        if (c.Body.Of("recipient_id").AsId() is not { } id || !c.Realm.People.TryGetValue(id, out var person) || person.IsBot)
            throw Refusal.BadRecipient();
        if (person.DirectMessages == DirectMessages.NotEvenOpened)
            throw new Refusal(400, 50007, "Cannot send messages to this user");
        if (c.Realm.DirectChannels.TryGetValue(id, out var known))
            return Reply.Ok(RenderPlaces.Channel(known));
        var recent = c.Realm.DirectChannels.Values.Count(d => c.Realm.Now - Snowflakes.MadeAt(d.Id) < OpenWindow);
        if (c.Realm.Options.MostDirectOpens is > 0 and var most && recent >= most)
            throw Refusal.DmsTooFast();
        return Reply.Ok(RenderPlaces.Channel(Opened(c.Realm, person)));
    }

    /// <summary>The direct channel with a person; the same one each time.</summary>
    public static Channel Opened(Realm realm, Person person)
    {
        if (realm.DirectChannels.TryGetValue(person.Id, out var known))
            return known;
        var channel = new Channel(realm.Ids.Next(), ChannelKind.Direct, "", null, null) { Recipient = person };
        realm.DirectChannels.Add(person.Id, channel);
        realm.Add(channel);
        return channel;
    }
}
