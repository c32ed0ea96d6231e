using System.Text.Json;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>What was seen on one socket of a client.</summary>
public sealed class ConnectionReport
{
    internal ConnectionReport(string path, IReadOnlyDictionary<string, string> query, DateTimeOffset openedAt)
    {
        Path = path;
        Query = query;
        OpenedAt = openedAt;
    }

    /// <summary>Path asked for: <c>/</c>, or the resume address's own.</summary>
    public string Path { get; }

    public IReadOnlyDictionary<string, string> Query { get; }

    public DateTimeOffset OpenedAt { get; }

    /// <summary>The <c>d</c> of the identify on this socket.</summary>
    public JsonElement? Identify { get; internal set; }

    /// <summary>The <c>d</c> of the last resume on this socket.</summary>
    public JsonElement? Resume { get; internal set; }

    /// <summary>When each heartbeat came.</summary>
    public IReadOnlyList<DateTimeOffset> Beats => [.. BeatList.ToArray()];

    /// <summary>All messages the client sent, heartbeats included.</summary>
    public int Sends { get; internal set; }

    /// <summary>Bytes of the largest message the client sent.</summary>
    public int LargestSend { get; internal set; }

    /// <summary>The code the client closed with; null when it never did.</summary>
    public int? ClosedByClient { get; internal set; }

    /// <summary>The code the stand-in closed with first; null when it never did.</summary>
    public int? ClosedByUs { get; internal set; }

    /// <summary>When the link ended; null while it stands.</summary>
    public DateTimeOffset? EndedAt { get; internal set; }

    internal System.Collections.Concurrent.ConcurrentQueue<DateTimeOffset> BeatList { get; } = [];
}
