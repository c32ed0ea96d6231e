using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Identify and resume. Under the realm's lock.</summary>
internal sealed class Login(Realm realm, FaultInjector faults, Connection connection)
{
    public void Identify(JsonElement? data, Action<int, string> refuse)
    {
        if (connection.Identified)
        {
            refuse(4005, "Already authenticated.");
            return;
        }
        if (data.Of("token").AsText() != realm.Options.Token)
        {
            refuse(4004, "Authentication failed.");
            return;
        }
        if (data.Of("intents").AsNumber() is not { } intents || (intents & ~Intents.Known) != 0 || data.Of("properties") is null)
        {
            refuse(4013, "Invalid intent(s).");
            return;
        }
        if ((intents & Intents.Privileged & ~realm.Options.AllowedPrivilegedIntents) != 0)
        {
            refuse(4014, "Disallowed intent(s).");
            return;
        }
        if (Shard(data) is not var (shard, shards))
        {
            refuse(4010, "Invalid shard.");
            return;
        }
        connection.Report.Identify = data?.Clone();
        if (!realm.Hub.MayIdentify() || faults.Draw(FaultKind.IdentifyRefused))
        {
            connection.Send("""{"t":null,"s":null,"op":9,"d":false}""");
            return;
        }
        connection.Identified = true;
        var session = new Session(realm.Ids.Next().ToString("x", CultureInfo.InvariantCulture), intents, shard, shards);
        realm.Hub.Sessions.Add(session);
        session.Attach(connection);
        connection.Session = session;
        session.Deliver("READY", faults.Disfigure(Ready(session)));
        Welcome(session);
        realm.Changed();
    }

    public void Resume(JsonElement? data, Action<int, string> refuse)
    {
        connection.Report.Resume = data?.Clone();
        if (data.Of("token").AsText() != realm.Options.Token)
        {
            refuse(4004, "Authentication failed.");
            return;
        }
        var session = realm.Hub.Sessions.Find(s => s.Id == data.Of("session_id").AsText());
        if (session is null || realm.Now - (session.AloneSince ?? realm.Now) > realm.Options.SessionLife || faults.Draw(FaultKind.ResumeRefused))
        {
            if (session is not null)
                realm.Hub.Forget(session);
            connection.Send("""{"t":null,"s":null,"op":9,"d":false}""");
            realm.Changed();
            return;
        }
        if (data.Of("seq").AsNumber() is not { } sequence || sequence > session.Sequence)
        {
            realm.Hub.Forget(session);
            refuse(4007, "Invalid seq.");
            return;
        }
        if (!session.CanReplayFrom(sequence))
        {
            realm.Hub.Forget(session);
            connection.Send("""{"t":null,"s":null,"op":9,"d":false}""");
            return;
        }
        session.Attach(connection);
        connection.Session = session;
        connection.Identified = true;
        foreach (var frame in session.After(sequence))
            connection.Send(frame);
        session.Deliver("RESUMED", new JsonObject { ["_trace"] = new JsonArray("stand-in") });
        realm.Changed();
    }

    private JsonObject Ready(Session session)
    {
        var ready = new JsonObject
        {
            ["v"] = 10,
            ["user"] = Render.OwnUser(realm.Bot),
            ["guilds"] = Wire.ArrayOf(GuildsOf(session).Select(RenderGuild.Unavailable)),
            ["private_channels"] = new JsonArray(),
            ["relationships"] = new JsonArray(),
            ["session_id"] = session.Id,
            ["session_type"] = "normal",
            ["resume_gateway_url"] = realm.Options.ResumeAddress(realm.Address),
            ["application"] = new JsonObject { ["id"] = realm.ApplicationId.Text(), ["flags"] = 0 },
            ["_trace"] = new JsonArray("stand-in"),
        };
        if (connection.Report.Identify.Of("shard") is not null)
            ready["shard"] = new JsonArray(session.Shard, session.Shards);
        return ready;
    }

    private void Welcome(Session session)
    {
        if (!session.Intents.HasBit(Intents.Guilds))
            return;
        foreach (var guild in GuildsOf(session).Where(g => !g.Unavailable))
            session.Deliver("GUILD_CREATE", faults.Disfigure(RenderGuild.Created(guild, realm.Bot)));
    }

    private IEnumerable<Guild> GuildsOf(Session session) =>
        realm.Guilds.Values.Where(g => g.BotIsIn && (int)((g.Id >> 22) % (ulong)session.Shards) == session.Shard);

    private static (int Shard, int Shards)? Shard(JsonElement? data)
    {
        if (data.Of("shard") is not { } said)
            return (0, 1);
        var numbers = ((JsonElement?)said).AsItems().Select(n => ((JsonElement?)n).AsNumber()).ToArray();
        return numbers is [{ } shard, { } shards] && shards is >= 1 and <= 64 && shard >= 0 && shard < shards ? ((int)shard, (int)shards) : null;
    }
}
