using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

// What people say and do to messages and threads.
public sealed partial class StandIn
{
    /// <summary>A person says something. Their own app would refuse without the right to, and so does this.</summary>
    /// <param name="replyTo">The message replied to; its author is rung for unless <paramref name="quietReply"/>.</param>
    /// <param name="mentions">People named before the text.</param>
    public Task<SeenMessage> SayAsync(Person person, Channel channel, string text, SeenMessage? replyTo = null, bool quietReply = false, params Person[] mentions)
    {
        lock (realm.Gate)
        {
            NeedToSay(person, channel);
            var words = string.Concat(mentions.Select(m => $"<@{m.Id}> ")) + text;
            var body = new JsonObject { ["content"] = words };
            if (replyTo is not null)
                body["message_reference"] = new JsonObject { ["message_id"] = replyTo.Id.Text() };
            if (quietReply)
                body["allowed_mentions"] = new JsonObject { ["parse"] = new JsonArray("users", "roles", "everyone"), ["replied_user"] = false };
            var draft = new Draft(JsonSerializer.SerializeToElement(body), []);
            return Task.FromResult(SeenMessage.Of(MessageDesk.Post(realm, channel, person, draft)));
        }
    }

    /// <summary>A person sends a file.</summary>
    public Task<SeenMessage> SendFileAsync(Person person, Channel channel, string fileName, byte[] bytes, string text = "")
    {
        lock (realm.Gate)
        {
            NeedToSay(person, channel);
            var draft = new Draft(JsonSerializer.SerializeToElement(new JsonObject { ["content"] = text }), [new Upload("files[0]", fileName, "application/octet-stream", bytes)]);
            return Task.FromResult(SeenMessage.Of(MessageDesk.Post(realm, channel, person, draft)));
        }
    }

    /// <summary>A person changes what they said.</summary>
    public Task EditAsync(SeenMessage message, string text)
    {
        lock (realm.Gate)
            MessageDesk.Edit(realm, Standing(message.Id), Draft.Words(text));
        return Task.CompletedTask;
    }

    /// <summary>Somebody with the right to removes a message, whoever wrote it.</summary>
    public Task DeleteMessageAsync(SeenMessage message)
    {
        lock (realm.Gate)
            MessageDesk.Delete(realm, Standing(message.Id));
        return Task.CompletedTask;
    }

    public Task ReactAsync(Person person, SeenMessage message, string emoji)
    {
        lock (realm.Gate)
        {
            var found = Standing(message.Id);
            if (!found.Reactions.TryGetValue(emoji, out var who))
                found.Reactions[emoji] = who = [];
            if (who.Add(person.Id))
                ReactionRoutes.Tell(realm, found, person, emoji, "MESSAGE_REACTION_ADD");
        }
        return Task.CompletedTask;
    }

    /// <summary>A moderator (or time) shuts a thread, or opens it again; locked, only moderators may open it.</summary>
    public Task ArchiveAsync(Channel thread, bool archived = true, bool locked = false)
    {
        lock (realm.Gate)
        {
            var state = thread.Thread ?? throw new InvalidOperationException($"{thread.Name} is not a thread.");
            state.Locked = locked;
            if (state.Archived == archived)
                ThreadDesk.Updated(realm, thread);
            ThreadDesk.SetArchived(realm, thread, archived);
        }
        return Task.CompletedTask;
    }

    /// <summary>A moderator removes a thread or a channel.</summary>
    public Task DeleteChannelAsync(Channel channel)
    {
        lock (realm.Gate)
        {
            if (channel.Thread is not null)
            {
                ThreadDesk.Delete(realm, channel);
                return Task.CompletedTask;
            }
            realm.Emit("CHANNEL_DELETE", Gateway.Intents.Guilds, RenderPlaces.Channel(channel), channel.Guild, channel);
            channel.Deleted = true;
            foreach (var thread in channel.Guild!.Channels.Where(c => c.Parent == channel))
                thread.Deleted = true;
        }
        return Task.CompletedTask;
    }

    /// <summary>A person starts a thread of their own.</summary>
    public Channel StartThread(Person person, Channel parent, string name, bool isPrivate = false)
    {
        lock (realm.Gate)
        {
            var thread = ThreadDesk.Start(realm, parent, person, isPrivate ? ChannelKind.PrivateThread : ChannelKind.PublicThread, name);
            ThreadDesk.Announce(realm, thread, from: null);
            return thread;
        }
    }

    private static void NeedToSay(Person person, Channel channel)
    {
        var need = Rights.ViewChannel | (channel.Thread is null ? Rights.SendMessages : Rights.SendMessagesInThreads);
        if (channel.Deleted || channel.Kind == ChannelKind.Forum || !RightsOf.In(channel, person).HasFlag(need))
            throw new InvalidOperationException($"{person.Name} cannot speak in {channel.Name}.");
        if (channel.Thread is { Locked: true } && !RightsOf.In(channel, person).HasFlag(Rights.ManageThreads))
            throw new InvalidOperationException($"{channel.Name} is locked.");
    }

    private Message Standing(ulong id) =>
        realm.Channels.Where(c => !c.Deleted).Select(c => c.Find(id)).FirstOrDefault(m => m is not null && m.Type != MessageType.ThreadStarter)
        ?? throw new InvalidOperationException($"There is no message {id} any more.");
}
