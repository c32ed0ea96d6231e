using Microsoft.AspNetCore.Http;
using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>A request being served.</summary>
internal sealed class Entry(HttpContext context, Route? route, string path, DateTimeOffset at)
{
    public HttpContext Context { get; } = context;

    public Route? Route { get; } = route;

    public string Path { get; } = path;

    public DateTimeOffset At { get; } = at;

    public ReadBody Read { get; set; } = ReadBody.None;

    public int Status { get; set; }

    public string? Answer { get; set; }

    public FaultKind? Fault { get; set; }

    public IReadOnlyDictionary<string, string> Query { get; } = context.Request.Query.ToDictionary(q => q.Key, q => q.Value.LastOrDefault() ?? "");

    public IReadOnlyDictionary<string, string> Headers { get; } =
        context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase);
}

/// <summary>What is written down: requests, and what was wrong with them. Safe to call at any time.</summary>
internal sealed class Ledger(bool keepRequests)
{
    private readonly Lock gate = new();
    private readonly List<LoggedRequest> requests = [];
    private readonly List<Violation> violations = [];
    private int count;

    /// <summary>Answers of 401, 403 and 429 other than shared: too many of these ban an address.</summary>
    public int Invalid { get; private set; }

    public int Count => count;

    public IReadOnlyList<LoggedRequest> Requests
    {
        get
        {
            lock (gate)
                return [.. requests];
        }
    }

    public IReadOnlyList<Violation> Violations
    {
        get
        {
            lock (gate)
                return [.. violations];
        }
    }

    public void Violate(string where, string what)
    {
        lock (gate)
            violations.Add(new Violation(where, what));
    }

    public void Record(Entry e)
    {
        var status = e.Context.RequestAborted.IsCancellationRequested ? 0 : e.Status != 0 ? e.Status : e.Context.Response.StatusCode;
        lock (gate)
        {
            count++;
            if (status is 401 or 403 || (status == 429 && e.Fault != FaultKind.RateLimitedShared))
                Invalid++;
            if (!keepRequests)
                return;
            requests.Add(new LoggedRequest(
                count, e.At, e.Context.Request.Method, e.Route?.Template ?? e.Path, e.Path, e.Query, e.Headers, e.Read.Json,
                [.. e.Read.Parts.Select(p => new LoggedPart(p.Part, p.FileName, p.ContentType, p.Bytes))], status, e.Answer, e.Fault));
        }
    }
}
