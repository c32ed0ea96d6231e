using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.Interactions;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Everything the stand-in knows, and the one lock it is read and changed under.</summary>
internal sealed class Realm
{
    private readonly Dictionary<ulong, Channel> channels = [];
    private readonly List<(Func<bool> Try, TaskCompletionSource Done)> waiting = [];

    public Realm(StandInOptions options, Hub hub)
    {
        Options = options;
        Hub = hub;
        Ids = new Snowflakes(options.Clock);
        ApplicationId = Ids.Next();
        Bot = new Person(Ids.Next(), "invented-helper", isBot: true);
        People.Add(Bot.Id, Bot);
    }

    public Lock Gate { get; } = new();

    public StandInOptions Options { get; }

    public Hub Hub { get; }

    public Snowflakes Ids { get; }

    /// <summary>Base address of the files on messages; known once the server listens.</summary>
    public string Address { get; set; } = "";

    public ulong ApplicationId { get; }

    public Person Bot { get; }

    public Dictionary<ulong, Person> People { get; } = [];

    public Dictionary<ulong, Guild> Guilds { get; } = [];

    public Dictionary<ulong, Channel> DirectChannels { get; } = [];

    public Dictionary<ulong, Interaction> Interactions { get; } = [];

    /// <summary>Files that people have sent along with commands.</summary>
    public Dictionary<ulong, SentFile> Sent { get; } = [];

    /// <summary>How often one of them was asked for.</summary>
    public int Fetched { get; set; }

    public CommandBook Commands { get; } = new();

    /// <summary>Called under the lock when a message was taken in.</summary>
    public Action<Message>? Posted { get; set; }

    public DateTimeOffset Now => Options.Clock.GetUtcNow();

    public IEnumerable<Channel> Channels => channels.Values;

    public void Add(Channel channel)
    {
        channels.Add(channel.Id, channel);
        channel.Guild?.Channels.Add(channel);
    }

    /// <summary>The channel, thread or direct channel of that id, unless it is gone.</summary>
    public Channel? Channel(ulong id) => channels.TryGetValue(id, out var found) && !found.Deleted ? found : null;

    /// <summary>Tells every session that may see it. Call under <see cref="Gate"/>; keeps the order of calls.</summary>
    public void Emit(string name, long intents, JsonObject data, Guild? guild = null, Channel? channel = null, Message? message = null)
    {
        if (guild is { BotIsIn: false } && name != "GUILD_DELETE")
            return;
        if (channel?.Guild is not null && !RightsOf.In(channel, Bot).HasFlag(Rights.ViewChannel))
            return;
        Hub.Dispatch(new GatewayEvent(name, intents, data, guild?.Id, channel?.Id, message));
    }

    /// <summary>Lets those look again who wait for something to become true. Call under <see cref="Gate"/>.</summary>
    public void Changed()
    {
        foreach (var (attempt, done) in waiting.ToArray())
        {
            if (!attempt())
                continue;
            waiting.Remove((attempt, done));
            done.TrySetResult();
        }
    }

    /// <summary>Completes when the attempt succeeds; it is tried now and after each change, always under the lock.</summary>
    public async Task UntilAsync(Func<bool> attempt, TimeSpan patience, string what)
    {
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (Gate)
        {
            if (attempt())
                return;
            waiting.Add((attempt, done));
        }
        // Patience is the test's own, so it runs on the real clock even when the platform's clock stands still.
        if (await Task.WhenAny(done.Task, Task.Delay(patience)).ConfigureAwait(false) == done.Task)
            return;
        lock (Gate)
            waiting.RemoveAll(w => w.Done == done);
        if (!done.Task.IsCompleted)
            throw new TimeoutException($"{what} did not happen within {patience.TotalSeconds} s.");
    }
}
