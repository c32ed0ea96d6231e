using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Who is in a thread.</summary>
internal static class ThreadMemberRoutes
{
    public static void Add(RouteTable table)
    {
        const string all = "/channels/{channel_id}/thread-members";
        table.Add("GET", all, List);
        table.Add("PUT", all + "/@me", c => Join(c, c.Realm.Bot));
        table.Add("DELETE", all + "/@me", c => Leave(c, c.Realm.Bot));
        table.Add("GET", all + "/{user_id}", One);
        table.Add("PUT", all + "/{user_id}", c => Join(c, c.PersonOf("user_id")));
        table.Add("DELETE", all + "/{user_id}", c => Leave(c, c.PersonOf("user_id")));
    }

    private static Channel Thread(RestCall c)
    {
        var channel = c.Channel();
        return channel.Thread is not null ? channel : throw new Refusal(400, 50024, "Cannot execute action on this channel type");
    }

    private static Reply Join(RestCall c, Person person)
    {
        var thread = Thread(c);
        ThreadDesk.RefuseIfShut(c.Realm, thread, c.Realm.Bot);
        if (person != c.Realm.Bot)
            c.Need(thread, Rights.SendMessagesInThreads);
        if (!thread.Guild!.Members.ContainsKey(person.Id))
            throw Refusal.UnknownMember();
        if (thread.Thread!.Members.Count >= 1000)
            throw new Refusal(400, 30033, "Maximum number of thread participants has been reached (1000)");
        ThreadDesk.Join(c.Realm, thread, person);
        return Reply.Empty;
    }

    private static Reply Leave(RestCall c, Person person)
    {
        var thread = Thread(c);
        ThreadDesk.RefuseIfShut(c.Realm, thread, c.Realm.Bot);
        var ownPrivate = thread.Kind == ChannelKind.PrivateThread && thread.Thread!.Owner == c.Realm.Bot;
        if (person != c.Realm.Bot && !ownPrivate)
            c.Need(thread, Rights.ManageThreads);
        ThreadDesk.Leave(c.Realm, thread, person);
        return Reply.Empty;
    }

    private static Reply One(RestCall c)
    {
        var thread = Thread(c);
        var person = c.PersonOf("user_id");
        if (!thread.Thread!.Members.ContainsKey(person.Id))
            throw Refusal.UnknownMember();
        return Reply.Ok(Told(c, thread, person.Id));
    }

    private static Reply List(RestCall c)
    {
        var thread = Thread(c);
        if (!c.Realm.Options.AllowedPrivilegedIntents.HasBit(Intents.GuildMembers))
            throw Refusal.MissingAccess();
        return Reply.Ok(Wire.ArrayOf(thread.Thread!.Members.Keys.Select(id => Told(c, thread, id))));
    }

    private static JsonObject Told(RestCall c, Channel thread, ulong personId)
    {
        var told = RenderPlaces.ThreadMember(thread, personId);
        if (c.AskedTrue("with_member") && thread.Guild!.Members.TryGetValue(personId, out var member))
            told["member"] = Render.Member(member);
        return told;
    }
}
