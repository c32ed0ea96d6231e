using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

// Looking on: messages, threads, requests, sockets, and waiting for them.
public sealed partial class StandIn
{
    private static readonly TimeSpan UsualPatience = TimeSpan.FromSeconds(60);

    /// <summary>Every request so far, oldest first.</summary>
    public IReadOnlyList<LoggedRequest> Requests => ledger.Requests;

    /// <summary>What the client did that the rules or the checks forbid.</summary>
    public IReadOnlyList<Violation> Violations => ledger.Violations;

    /// <summary>Answers of 401, 403 and 429 (not shared): the platform bans an address at 10,000 in 10 minutes.</summary>
    public int InvalidRequests => ledger.Invalid;

    /// <summary>Every socket a client opened, oldest first.</summary>
    public IReadOnlyList<ConnectionReport> Connections
    {
        get
        {
            lock (realm.Gate)
                return [.. realm.Hub.Reports];
        }
    }

    /// <summary>All messages of a channel in order, private and removed ones included unless left out.</summary>
    public IReadOnlyList<SeenMessage> Messages(Channel channel, bool removed = true)
    {
        lock (realm.Gate)
            return [.. channel.Messages.Where(m => removed || !m.Deleted).Select(SeenMessage.Of)];
    }

    /// <summary>The message as it stands now; also when removed.</summary>
    public SeenMessage Now(SeenMessage message)
    {
        lock (realm.Gate)
            return SeenMessage.Of(realm.Channels.First(c => c.Id == message.ChannelId).Messages.First(m => m.Id == message.Id));
    }

    /// <summary>Threads of a channel or forum that are not removed, oldest first.</summary>
    public IReadOnlyList<Channel> Threads(Channel parent)
    {
        lock (realm.Gate)
            return [.. realm.Channels.Where(c => c.Parent == parent && c.Thread is not null && !c.Deleted)];
    }

    /// <summary>People in a thread.</summary>
    public IReadOnlyList<Person> PeopleIn(Channel thread)
    {
        lock (realm.Gate)
            return [.. thread.Thread!.Members.Keys.Select(id => realm.People[id])];
    }

    /// <summary>The channel or thread of that id; null when it is not there or removed.</summary>
    public Channel? ChannelOf(ulong id)
    {
        lock (realm.Gate)
            return realm.Channel(id);
    }

    /// <summary>The registered commands, global or of a guild, as JSON text.</summary>
    public IReadOnlyList<string> Commands(Guild? guild = null)
    {
        lock (realm.Gate)
            return [.. realm.Commands.In(guild?.Id ?? 0).Select(c => c.ToJsonString())];
    }

    /// <summary>The first message, standing now or coming or being changed later, that fits. Looks at the newest first.</summary>
    /// <param name="patience">A minute when null, since a busy machine is slow; on the real clock.</param>
    /// <exception cref="TimeoutException">None came in time.</exception>
    public async Task<SeenMessage> WaitForMessageAsync(Func<SeenMessage, bool> fits, TimeSpan? patience = null)
    {
        SeenMessage? found = null;
        await realm.UntilAsync(
            () =>
            {
                found = realm.Channels.SelectMany(c => c.Standing.Where(m => !m.Loading)).OrderByDescending(m => m.Id).Select(SeenMessage.Of).FirstOrDefault(fits);
                return found is not null;
            },
            patience ?? UsualPatience, "the message waited for").ConfigureAwait(false);
        return found!;
    }

    /// <summary>Waits until something is so; looked at now, after every change of the world, every request and every beat.</summary>
    public Task WaitUntilAsync(Func<bool> so, string what, TimeSpan? patience = null) => realm.UntilAsync(so, patience ?? UsualPatience, what);

    /// <summary>Waits until a client is logged in and listening.</summary>
    public Task WaitForLoginAsync(TimeSpan? patience = null) =>
        WaitUntilAsync(() => realm.Hub.Sessions.Exists(s => s.Connection is not null), "a login", patience);

    /// <summary>Waits until commands are registered, globally or in a guild.</summary>
    public Task WaitForCommandsAsync(Guild? guild = null, TimeSpan? patience = null) =>
        WaitUntilAsync(() => realm.Commands.In(guild?.Id ?? 0).Count > 0, "the registering of commands", patience);
}
