using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Control;

/// <summary>The controls, by method and name. Ids in answers are text, as on the platform.</summary>
internal sealed class ControlCommands(StandIn standIn, Said said)
{
    /// <summary>What to answer; null when there is no such control.</summary>
    public async Task<object?> RunAsync(string method, string name) => (method, name) switch
    {
        ("GET", "world") => World(),
        ("GET", "log") => standIn.Requests.Where(r => r.Number > said.Number("after", 0)).Select(Told),
        ("GET", "links") => standIn.Connections.Select(Told),
        ("GET", "violations") => standIn.Violations,
        ("GET", "faults") => standIn.Faults.Injected.ToDictionary(f => f.Key.ToString(), f => f.Value),
        ("GET", "messages") => standIn.Messages(Channel("channel")).Select(Told),
        ("POST", "person") => new { id = standIn.AddPerson(said.Text("name")).Id.Text() },
        ("POST", "guild") => new { id = (await standIn.AddGuildAsync(said.Text("name")).ConfigureAwait(false)).Id.Text() },
        ("POST", "channel") => new { id = AddChannel().Id.Text() },
        ("POST", "join") => new { ok = standIn.Join(Guild("guild"), Person("person")) is not null },
        ("POST", "direct") => new { id = standIn.DirectChannel(Person("person")).Id.Text() },
        ("POST", "say") => Told(await standIn.SayAsync(Person("person"), Channel("channel"), said.Text("text")).ConfigureAwait(false)),
        ("POST", "exchange") => Told(await Exchange.HoldAsync(standIn, Person("person"), Channel("channel"), said.Text("text"), said.Maybe("reply_to") is null ? null : Message("reply_to")).ConfigureAwait(false)),
        ("POST", "press") => await ToldAsync(await standIn.PressAsync(Person("person"), Message("message"), said.Text("custom_id")).ConfigureAwait(false)).ConfigureAwait(false),
        ("POST", "pick") => await ToldAsync(await standIn.PickAsync(Person("person"), Message("message"), said.Text("custom_id"), said.List("values")).ConfigureAwait(false)).ConfigureAwait(false),
        ("POST", "submit") => await ToldAsync(await standIn.SubmitAsync(Opener(), Options()).ConfigureAwait(false)).ConfigureAwait(false),
        ("POST", "command") => await ToldAsync(await standIn.CommandAsync(Person("person"), Channel("channel"), said.Text("name"), Options()).ConfigureAwait(false)).ConfigureAwait(false),
        ("POST", "archive") => await DoneAsync(standIn.ArchiveAsync(Channel("channel"), said.Flag("archived", true), said.Flag("locked", false))).ConfigureAwait(false),
        ("POST", "delete") => await DoneAsync(standIn.DeleteMessageAsync(Message("message"))).ConfigureAwait(false),
        ("POST", "fault") => Arm(),
        ("POST", "strike") => new { met = standIn.Strike(Kind()) },
        ("POST", "close") => Close(),
        ("POST", "refuse") => Refuse(),
        ("POST", "flood") => await new Flood(standIn.Realm, said.Flag("called", false)).FloodAsync(Person("person"), Channel("channel"), said.Number("count", 20_000)).ConfigureAwait(false),
        ("POST", "echo") => await new Flood(standIn.Realm, said.Flag("called", false)).EchoAsync(Person("person"), Channel("channel"), said.Number("warm_up", 50), said.Number("rounds", 500)).ConfigureAwait(false),
        _ => null,
    };

    private object World()
    {
        var realm = standIn.Realm;
        lock (realm.Gate)
        {
            return new
            {
                token = standIn.Options.Token,
                application = standIn.ApplicationId.Text(),
                bot = standIn.Bot.Id.Text(),
                people = realm.People.Values.Select(p => new { id = p.Id.Text(), name = p.Name, bot = p.IsBot }).ToArray(),
                guilds = realm.Guilds.Values.Select(g => new { id = g.Id.Text(), name = g.Name, owner = g.Owner.Id.Text(), bot_is_in = g.BotIsIn }).ToArray(),
                channels = realm.Channels.Where(c => !c.Deleted).Select(c => new { id = c.Id.Text(), name = c.Name, type = (int)c.Kind, guild = c.Guild?.Id.Text(), parent = c.Parent?.Id.Text(), archived = c.Thread?.Archived }).ToArray(),
                sessions = realm.Hub.Sessions.Count(s => s.Connection is not null),
            };
        }
    }

    private Channel AddChannel() => standIn.AddChannel(
        Guild("guild"), said.Text("name"), (ChannelKind)said.Number("type", 0), said.List("tags"));

    private object Arm()
    {
        standIn.Faults.Next(Kind(), said.Maybe("route"), said.Number("times", 1));
        return new { ok = true };
    }

    private object Close()
    {
        standIn.CloseLinks(said.Number("code", 4000));
        return new { ok = true };
    }

    private object Refuse()
    {
        standIn.Faults.RefuseNext(said.Text("route"), said.Number("status", 403), said.Number("code", 50013), times: said.Number("times", 1));
        return new { ok = true };
    }

    private FaultKind Kind() => Enum.Parse<FaultKind>(said.Text("kind"), ignoreCase: true);

    private Person Person(string name) => standIn.Realm.People.GetValueOrDefault(said.Id(name)) ?? throw new ArgumentException($"No such person: {said.Text(name)}.");

    private Guild Guild(string name) => standIn.Realm.Guilds.GetValueOrDefault(said.Id(name)) ?? throw new ArgumentException($"No such guild: {said.Text(name)}.");

    private Channel Channel(string name) => standIn.ChannelOf(said.Id(name)) ?? throw new ArgumentException($"No such channel: {said.Text(name)}.");

    private SeenMessage Message(string name)
    {
        var realm = standIn.Realm;
        lock (realm.Gate)
        {
            var found = realm.Channels.SelectMany(c => c.Messages).FirstOrDefault(m => m.Id == said.Id(name));
            return found is not null ? SeenMessage.Of(found) : throw new ArgumentException($"No such message: {said.Text(name)}.");
        }
    }

    /// <summary>What was answered with a form, by the id its answer told.</summary>
    private Deed Opener()
    {
        var realm = standIn.Realm;
        lock (realm.Gate)
            return new Deed(realm, realm.Interactions.GetValueOrDefault(said.Id("interaction")) ?? throw new ArgumentException($"No such interaction: {said.Text("interaction")}."));
    }

    private Dictionary<string, object> Options()
    {
        var options = new Dictionary<string, object>();
        foreach (var (name, value) in (said.Body["options"] ?? said.Body["values"]) as JsonObject ?? [])
        {
            options[name] = value!.GetValueKind() switch
            {
                JsonValueKind.True => true,
                JsonValueKind.False => false,
                JsonValueKind.Number => value.AsValue().TryGetValue<long>(out var whole) ? whole : value.GetValue<double>(),
                // A member, a channel or a role: {"channel": "id"}.
                JsonValueKind.Object => Thing((JsonObject)value),
                _ => value.ToString(),
            };
        }
        return options;
    }

    private object Thing(JsonObject value)
    {
        var (kind, id) = (value.Single().Key, ulong.Parse(value.Single().Value!.ToString(), CultureInfo.InvariantCulture));
        var realm = standIn.Realm;
        lock (realm.Gate)
        {
            object? found = kind switch
            {
                "channel" => realm.Channel(id),
                "person" => realm.People.GetValueOrDefault(id),
                "role" => realm.Guilds.Values.Select(g => g.RoleOf(id)).FirstOrDefault(r => r is not null),
                _ => null,
            };
            return found ?? throw new ArgumentException($"No such {kind}: {id}.");
        }
    }

    private static object Told(Exchange.Said said) => new { took_ms = said.TookMs, message = Told(said.Answer) };

    private static async Task<object> DoneAsync(Task task)
    {
        await task.ConfigureAwait(false);
        return new { ok = true };
    }

    private static async Task<object> ToldAsync(Deed deed)
    {
        var answer = await deed.Answered.ConfigureAwait(false);
        return new { interaction = deed.Id.Text(), answer_type = answer.Type, took_ms = answer.Took.TotalMilliseconds, message = answer.Message is { } m ? Told(m) : null, shown = answer.Shown };
    }

    private static object Told(Rest.LoggedRequest r) => new
    {
        number = r.Number,
        method = r.Method,
        route = r.Route,
        path = r.Path,
        body = r.Body,
        parts = r.Parts.Select(p => new { name = p.Name, file_name = p.FileName, bytes = p.Bytes.Length }),
        status = r.Status,
        fault = r.Fault?.ToString(),
    };

    private static object Told(Gateway.ConnectionReport r) => new
    {
        path = r.Path,
        identify = r.Identify,
        resume = r.Resume,
        beats = r.Beats.Count,
        closed_by_client = r.ClosedByClient,
        closed_by_us = r.ClosedByUs,
        ended = r.EndedAt is not null,
    };

    private static object Told(SeenMessage m) => new
    {
        id = m.Id.Text(),
        channel = m.ChannelId.Text(),
        author = m.AuthorId.Text(),
        words = m.Words,
        flags = m.Flags,
        components = m.Parts,
        controls = m.Controls,
        files = m.Files.Select(f => new { name = f.FileName, description = f.Description, bytes = f.Bytes.Length }),
        reply_to = m.ReplyTo?.Text(),
        deleted = m.Deleted,
        rang_for = m.RangFor.Select(id => id.Text()),
    };
}
