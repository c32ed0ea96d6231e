using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Gateway;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Makes, opens, shuts and removes threads, and tells the sessions. Call under the realm's lock.</summary>
internal static class ThreadDesk
{
    public static Channel Start(Realm realm, Channel parent, Person owner, ChannelKind kind, string name, Message? from = null, ulong? id = null)
    {
        if (parent.Guild!.Channels.Count(c => c.Thread is { Archived: false } && !c.Deleted) >= realm.Options.MostActiveThreads)
            throw Refusal.TooManyThreads();
        var thread = new Channel(id ?? from?.Id ?? realm.Ids.Next(), kind, name, parent.Guild, parent) { Thread = new ThreadFacts(owner, realm.Now) };
        thread.Thread.Members[owner.Id] = realm.Now;
        realm.Add(thread);
        if (from is not null)
        {
            from.StartedThread = thread;
            from.Flags |= MessageFlags.HasThread;
        }
        return thread;
    }

    /// <summary>Tells of a new thread; apart from <see cref="Start"/>, because the body's wishes are put in between.</summary>
    public static void Announce(Realm realm, Channel thread, Message? from)
    {
        var data = RenderPlaces.Thread(thread);
        data["newly_created"] = true;
        if (thread.Thread!.Members.ContainsKey(realm.Bot.Id))
            data["member"] = RenderPlaces.ThreadMember(thread, realm.Bot.Id);
        realm.Emit("THREAD_CREATE", Intents.Guilds, data, thread.Guild, thread);
        if (from is not null)
            realm.Emit("MESSAGE_UPDATE", Intents.MessagesOf(from.Channel), RenderMessage.ForGateway(realm, from), from.Channel.Guild, from.Channel, from);
        realm.Changed();
    }

    /// <summary>The line a channel gets when a public thread was started without a message.</summary>
    public static void Mark(Realm realm, Channel parent, Channel thread)
    {
        var line = new Message(realm.Ids.Next(), parent, thread.Thread!.Owner) { Type = MessageType.ThreadCreated, Content = thread.Name, StartedThread = thread };
        parent.Messages.Add(line);
        realm.Emit("MESSAGE_CREATE", Intents.MessagesOf(parent), RenderMessage.ForGateway(realm, line), parent.Guild, parent, line);
        realm.Changed();
    }

    /// <summary>Somebody is about to speak in a channel: a shut thread opens, a locked one refuses, the speaker joins.</summary>
    public static void Spoken(Realm realm, Channel channel, Person author, Message message, bool uncounted)
    {
        if (channel.Thread is not { } state)
            return;
        if (!message.Ephemeral && state.Archived)
            SetArchived(realm, channel, false);
        foreach (var id in message.Pings.People.Append(author.Id).Where(realm.People.ContainsKey))
            Join(realm, channel, realm.People[id]);
        if (!uncounted && !message.Ephemeral)
            state.TotalSent++;
    }

    public static void RefuseIfLocked(Realm realm, Channel channel, Person who)
    {
        if (channel.Thread is { Locked: true } && !RightsOf.In(channel, who).HasFlag(Rights.ManageThreads))
            throw Refusal.ThreadLocked();
    }

    /// <summary>What a shut thread does not take: edits, reactions, joining.</summary>
    public static void RefuseIfShut(Realm realm, Channel channel, Person who)
    {
        if (channel.Thread is { Archived: true })
            throw Refusal.Archived();
        RefuseIfLocked(realm, channel, who);
    }

    public static void SetArchived(Realm realm, Channel thread, bool archived)
    {
        var state = thread.Thread!;
        if (state.Archived == archived)
            return;
        state.Archived = archived;
        state.ArchiveChangedAt = realm.Now;
        Updated(realm, thread);
    }

    public static void Updated(Realm realm, Channel thread)
    {
        realm.Emit("THREAD_UPDATE", Intents.Guilds, RenderPlaces.Thread(thread), thread.Guild, thread);
        realm.Changed();
    }

    public static void Delete(Realm realm, Channel thread)
    {
        realm.Emit("THREAD_DELETE", Intents.Guilds, RenderPlaces.Gone(thread), thread.Guild, thread);
        thread.Deleted = true;
        realm.Changed();
    }

    public static void Join(Realm realm, Channel thread, Person person)
    {
        if (thread.Guild?.Members.ContainsKey(person.Id) != true || !thread.Thread!.Members.TryAdd(person.Id, realm.Now))
            return;
        MembersChanged(realm, thread, person, joined: true);
    }

    public static void Leave(Realm realm, Channel thread, Person person)
    {
        if (thread.Thread!.Members.Remove(person.Id))
            MembersChanged(realm, thread, person, joined: false);
    }

    private static void MembersChanged(Realm realm, Channel thread, Person person, bool joined)
    {
        // Of others the bot is told only with the members intent; of itself always.
        var intents = person == realm.Bot ? Intents.Guilds : Intents.GuildMembers;
        var data = new JsonObject { ["id"] = thread.Id.Text(), ["guild_id"] = thread.Guild!.Id.Text(), ["member_count"] = Math.Min(50, thread.Thread!.Members.Count) };
        if (joined)
        {
            var member = RenderPlaces.ThreadMember(thread, person.Id);
            member["member"] = Render.Member(thread.Guild.Members[person.Id]);
            member["presence"] = null;
            data["added_members"] = new JsonArray(member);
        }
        else
        {
            data["removed_member_ids"] = new JsonArray(person.Id.Text());
        }
        realm.Emit("THREAD_MEMBERS_UPDATE", intents, data, thread.Guild, thread);
        realm.Changed();
    }
}
