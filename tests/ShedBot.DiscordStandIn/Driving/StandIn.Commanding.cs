using System.Globalization;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Interactions;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

// Slash commands, menu commands and completions, as the registered commands allow them.
public sealed partial class StandIn
{
    private const int Slash = 1, PersonMenu = 2, MessageMenu = 3;

    /// <summary>Issues a slash command that is registered and that the person is shown.</summary>
    /// <param name="name">With its sub-command, if it has any, after a space: <c>room open</c>.</param>
    /// <param name="options">By name: text, whole or decimal number, true or false, or a <see cref="Person"/>, <see cref="Channel"/> or <see cref="Role"/>.</param>
    public Task<Deed> CommandAsync(Person person, Channel channel, string name, IReadOnlyDictionary<string, object>? options = null)
    {
        lock (realm.Gate)
        {
            var words = name.Split(' ');
            var command = Offered(person, channel, Slash, words[0]);
            var filled = OptionFilling.Fill(command, words[1..], options ?? new Dictionary<string, object>(), partial: false);
            var ids = (options ?? new Dictionary<string, object>()).Values.Select(OptionFilling.IdOf).OfType<ulong>();
            return Done(InteractionDesk.Command(realm, person, channel, command, filled, Resolved.ByIds(realm, channel.Guild, ids), null));
        }
    }

    /// <summary>A file to be sent along with a command, as its option.</summary>
    /// <param name="toldSize">What the bot is told of its size; null: the truth.</param>
    /// <param name="toldAddress">Where the bot is told to fetch it; null: where it is served.</param>
    public SentFile File(string name, ReadOnlyMemory<byte> bytes, string contentType = "text/plain; charset=utf-8", long? toldSize = null, string? toldAddress = null)
    {
        lock (realm.Gate)
        {
            var file = new SentFile(realm.Ids.Next(), name, contentType, bytes, toldSize, toldAddress);
            realm.Sent.Add(file.Id, file);
            return file;
        }
    }

    /// <summary>How often files that were sent along were fetched.</summary>
    public int FilesFetched
    {
        get
        {
            lock (realm.Gate)
                return realm.Fetched;
        }
    }

    /// <summary>Uses a registered menu command on a message.</summary>
    public Task<Deed> MenuAsync(Person person, string name, SeenMessage message)
    {
        lock (realm.Gate)
        {
            var target = Reachable(person, message);
            var command = Offered(person, target.Channel, MessageMenu, name);
            var resolved = Resolved.Of(realm, target.Channel.Guild, [], [target], [], []);
            return Done(InteractionDesk.Command(realm, person, target.Channel, command, [], resolved, target.Id));
        }
    }

    /// <summary>Uses a registered menu command on a person.</summary>
    public Task<Deed> MenuAsync(Person person, Channel channel, string name, Person target)
    {
        lock (realm.Gate)
        {
            var command = Offered(person, channel, PersonMenu, name);
            return Done(InteractionDesk.Command(realm, person, channel, command, [], Resolved.Of(realm, channel.Guild, [target.Id], [], [], []), target.Id));
        }
    }

    /// <summary>Types part of an option and asks for completions; they are the answer's <see cref="Answer.Shown"/>.</summary>
    public Task<Deed> CompleteAsync(Person person, Channel channel, string name, string option, string typed)
    {
        lock (realm.Gate)
        {
            var words = name.Split(' ');
            var command = Offered(person, channel, Slash, words[0]);
            var filled = OptionFilling.Fill(command, words[1..], new Dictionary<string, object> { [option] = typed }, partial: true);
            return Done(InteractionDesk.Autocomplete(realm, person, channel, command, filled));
        }
    }

    /// <summary>A command no app would send: not registered, or not for this person. Options are passed on as text.</summary>
    public Task<Deed> ForgedCommandAsync(Person person, Channel channel, string name, IReadOnlyDictionary<string, string>? options = null)
    {
        lock (realm.Gate)
        {
            var words = name.Split(' ');
            var command = realm.Commands.Find(channel.Guild?.Id, Slash, words[0]) ?? new JsonObject { ["id"] = realm.Ids.Next().Text(), ["name"] = words[0], ["type"] = Slash };
            var filled = Wire.ArrayOf((options ?? new Dictionary<string, string>()).Select(o => (JsonNode)new JsonObject { ["name"] = o.Key, ["type"] = 3, ["value"] = o.Value }));
            foreach (var word in words[1..].Reverse())
                filled = new JsonArray(new JsonObject { ["name"] = word, ["type"] = 1, ["options"] = filled });
            return Done(InteractionDesk.Command(realm, person, channel, command, filled, null, null));
        }
    }

    private JsonObject Offered(Person person, Channel channel, int type, string name)
    {
        var command = realm.Commands.Find(channel.Guild?.Id, type, name)
            ?? throw new InvalidOperationException($"No command '{name}' of type {type} is registered here.");
        var context = channel.Guild is null ? 1 : 0;
        if (command["contexts"] is JsonArray contexts && !contexts.Any(c => c!.GetValue<int>() == context))
            throw new InvalidOperationException($"'{name}' is not offered in this kind of place.");
        if (channel.Guild is null)
            return command;
        var has = RightsOf.In(channel, person);
        if (!has.HasFlag(Rights.ViewChannel | Rights.UseApplicationCommands))
            throw new InvalidOperationException($"{person.Name} cannot use commands in {channel.Name}.");
        if (command["default_member_permissions"] is { } need && has != Rights.All)
        {
            var bits = (Rights)ulong.Parse(need.ToString(), CultureInfo.InvariantCulture);
            if (bits == Rights.None || !has.HasFlag(bits))
                throw new InvalidOperationException($"'{name}' is not offered to {person.Name}.");
        }
        return command;
    }
}
