using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Takes a request through reading, checks, faults, limits and its handler, and writes the answer.</summary>
internal sealed class RestServer(Realm realm, FaultInjector faults, RouteTable routes, Ledger ledger)
{
    private static readonly TimeSpan HalfIsRead = TimeSpan.FromMilliseconds(50);
    private readonly Buckets buckets = new(realm.Options);

    public async Task ServeAsync(HttpContext context, string path)
    {
        var found = routes.Find(context.Request.Method, path);
        var entry = new Entry(context, found is var (r, _) ? r : null, path, realm.Now);
        try
        {
            if (found is not var (route, values))
                await WriteAsync(entry, new Reply(404, new JsonObject { ["code"] = 0, ["message"] = "404: Not Found" })).ConfigureAwait(false);
            else
                await ServeAsync(entry, route, values).ConfigureAwait(false);
        }
        catch (Refusal why)
        {
            await WriteAsync(entry, Reply.Refused(why)).ConfigureAwait(false);
        }
        finally
        {
            ledger.Record(entry);
            lock (realm.Gate)
                realm.Changed();
        }
    }

    private async Task ServeAsync(Entry entry, Route route, Dictionary<string, string> values)
    {
        var context = entry.Context;
        // One public client takes a 429 without this header for a ban by the network in front of the platform.
        context.Response.Headers.Via = "1.1 stand-in";
        if (TryDrop(entry, route, FaultKind.DroppedBeforeHandling))
            return;
        try
        {
            entry.Read = await RequestReader.ReadAsync(context.Request, context.RequestAborted).ConfigureAwait(false);
        }
        catch (Refusal why)
        {
            Blame(route, why);
            throw;
        }
        RefuseStrangers(context, route);
        if (Limits.Injected(faults, route.Name) is { } limit)
        {
            entry.Fault = limit.Kind;
            await limit.WriteAsync(context, faults.RetryAfter).ConfigureAwait(false);
            return;
        }
        foreach (var kind in new[] { FaultKind.ServerErrorJson, FaultKind.ServerErrorHtml })
        {
            if (!faults.Draw(kind, route.Name))
                continue;
            entry.Fault = kind;
            await ErrorAsync(entry, kind).ConfigureAwait(false);
            return;
        }
        if (faults.Refused(route.Name) is { } planned)
            throw planned;
        RefuseViolations(entry, route);
        await AnswerAsync(entry, route, values).ConfigureAwait(false);
    }

    private async Task AnswerAsync(Entry entry, Route route, Dictionary<string, string> values)
    {
        Buckets.State state;
        Reply reply;
        lock (realm.Gate)
        {
            state = buckets.Take(route, values, realm.Now);
            reply = state.LimitedBy is null ? Handle(entry, route, values) : new Reply(429, null);
        }
        Buckets.Tell(state, entry.Context.Response.Headers);
        if (state.LimitedBy is { } scope)
        {
            await Limits.Real(scope).WriteAsync(entry.Context, state.ResetAfter).ConfigureAwait(false);
            return;
        }
        if (TryDrop(entry, route, FaultKind.DroppedAfterHandling))
            return;
        if (faults.Draw(FaultKind.ServerErrorAfterHandling, route.Name))
        {
            entry.Fault = FaultKind.ServerErrorAfterHandling;
            await ErrorAsync(entry, FaultKind.ServerErrorHtml).ConfigureAwait(false);
            return;
        }
        if (faults.Draw(FaultKind.SlowAnswer, route.Name))
        {
            entry.Fault = FaultKind.SlowAnswer;
            await Task.Delay(faults.Delay).ConfigureAwait(false);
        }
        if (reply.Body is JsonObject body && reply.Status < 300)
            reply = reply with { Body = faults.Disfigure(body) };
        await WriteAsync(entry, reply, cut: reply.Body is not null && faults.Draw(FaultKind.DroppedMidBody, route.Name)).ConfigureAwait(false);
    }

    private Reply Handle(Entry entry, Route route, Dictionary<string, string> values)
    {
        try
        {
            return route.Handle(new RestCall(realm, values, entry.Query, entry.Read.Json, entry.Read.Files));
        }
        catch (Refusal why)
        {
            Blame(route, why);
            return Reply.Refused(why);
        }
    }

    /// <summary>A form that is malformed or empty is the client's own fault, whatever the state of the world.</summary>
    private void Blame(Route route, Refusal why)
    {
        if (why.Code is 50006 or 50035 or 50109)
            ledger.Violate(route.Name, why.Message);
    }

    private void RefuseStrangers(HttpContext context, Route route)
    {
        if (!route.Open && context.Request.Headers.Authorization != $"Bot {realm.Options.Token}")
            throw new Refusal(401, 0, "401: Unauthorized");
        // Public clients leave the agreed user agent off on interaction routes, and are served.
        if (route.OfInteraction || context.Request.Headers.UserAgent.ToString().StartsWith("DiscordBot (", StringComparison.Ordinal))
            return;
        ledger.Violate(route.Name, "the user agent must begin with DiscordBot (address, version)");
        throw new Refusal(403, 40333, "internal network error");
    }

    private void RefuseViolations(Entry entry, Route route)
    {
        if (realm.Options.Checks.Count == 0)
            return;
        var request = new CheckedRequest(
            route.Method, route.Template, entry.Path, entry.Query, entry.Read.Json,
            [.. entry.Read.Parts.Select(p => new CheckedPart(p.Part, p.FileName.Length == 0 ? null : p.FileName, p.Bytes.Length))], entry.Headers);
        var found = realm.Options.Checks.SelectMany(c => c.Violations(request)).ToList();
        if (found.Count == 0)
            return;
        foreach (var what in found)
            ledger.Violate(route.Name, what);
        throw Refusal.BadForm(string.Join("; ", found));
    }

    private bool TryDrop(Entry entry, Route route, FaultKind kind)
    {
        if (!faults.Draw(kind, route.Name))
            return false;
        entry.Fault = kind;
        entry.Context.Abort();
        return true;
    }

    private static Task ErrorAsync(Entry entry, FaultKind kind)
    {
        if (kind == FaultKind.ServerErrorJson)
            return WriteAsync(entry, new Reply(500, new JsonObject { ["code"] = 0, ["message"] = "500: Internal Server Error" }));
        entry.Status = 502;
        entry.Context.Response.StatusCode = 502;
        entry.Context.Response.ContentType = "text/html";
        return entry.Context.Response.WriteAsync("<html><head><title>502 Bad Gateway</title></head><body>bad gateway</body></html>");
    }

    private static async Task WriteAsync(Entry entry, Reply reply, bool cut = false)
    {
        var response = entry.Context.Response;
        response.StatusCode = entry.Status = reply.Status;
        if (reply.Body is null)
            return;
        entry.Answer = reply.Body.ToJsonString();
        var bytes = Encoding.UTF8.GetBytes(entry.Answer);
        response.ContentType = "application/json";
        response.ContentLength = bytes.Length;
        if (!cut)
        {
            await response.Body.WriteAsync(bytes).ConfigureAwait(false);
            return;
        }
        entry.Fault = FaultKind.DroppedMidBody;
        await response.Body.WriteAsync(bytes.AsMemory(0, bytes.Length / 2)).ConfigureAwait(false);
        await response.Body.FlushAsync().ConfigureAwait(false);
        // Cut at once, the half might be thrown away with the link before the other side has read it.
        await Task.Delay(HalfIsRead).ConfigureAwait(false);
        entry.Context.Abort();
    }
}
