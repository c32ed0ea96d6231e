using System.Text.RegularExpressions;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The headers of a request. Source: the platform's API reference and its audit log page; that the token stays away from the
/// routes that do not need it is our own rule, and both independent clients keep it.</summary>
internal static partial class HeaderRules
{
    private const int MostReason = 512;

    /// <param name="ours">Whether the agent must be right to the comma and on every route: one of the independent clients leaves the comma out,
    /// and sends its web library's own agent to interactions.</param>
    public static IEnumerable<string> Of(CheckedRequest request, bool ours)
    {
        var agent = Header(request, "User-Agent") ?? "";
        if (!(ours ? Agent() : LooseAgent()).IsMatch(agent) && (ours || !IsInteraction(request.Route))) yield return "User-Agent: must read DiscordBot (address, version)";
        foreach (var reason in Token(request).Concat(Kind(request)).Concat(Audit(request))) yield return reason;
    }

    /// <summary>Whether the route is opened by an interaction's own token.</summary>
    public static bool IsInteraction(string route) =>
        route.StartsWith("/interactions/", StringComparison.Ordinal) || route.StartsWith("/webhooks/{webhook_id}/{webhook_token}", StringComparison.Ordinal);

    private static IEnumerable<string> Token(CheckedRequest request)
    {
        var token = Header(request, "Authorization");
        if (IsInteraction(request.Route))
        {
            if (token is not null) yield return "Authorization: the bot's token has no business on an interaction's route";
        }
        else if (request.Route != "/gateway" && !BotToken().IsMatch(token ?? ""))
        {
            yield return "Authorization: must read Bot and the token";
        }
    }

    private static IEnumerable<string> Kind(CheckedRequest request)
    {
        if (request.Body is null && request.Parts.Count == 0) yield break;
        var wanted = request.Parts.Count > 0 ? "multipart/form-data" : "application/json";
        if (Header(request, "Content-Type")?.StartsWith(wanted, StringComparison.OrdinalIgnoreCase) is not true) yield return $"Content-Type: must be {wanted}";
    }

    private static IEnumerable<string> Audit(CheckedRequest request)
    {
        if (Header(request, "X-Audit-Log-Reason") is not { } reason) yield break;
        if (!reason.All(char.IsAscii) || reason.Contains(' ', StringComparison.Ordinal)) yield return "X-Audit-Log-Reason: must be percent-encoded UTF-8";
        if (Uri.UnescapeDataString(reason).Length is < 1 or > MostReason) yield return $"X-Audit-Log-Reason: 1 to {MostReason} characters";
        if (request.Method is "GET") yield return "X-Audit-Log-Reason: reading leaves no trace to explain";
    }

    private static string? Header(CheckedRequest request, string name) => request.Headers.TryGetValue(name, out var value) ? value : null;

    [GeneratedRegex(@"^DiscordBot \([^\s,]+, [^\s)]+\)( .*)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Agent();

    [GeneratedRegex(@"^DiscordBot \(\S+ \S+\)( .*)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex LooseAgent();

    [GeneratedRegex(@"^Bot \S+\z", RegexOptions.CultureInvariant)]
    private static partial Regex BotToken();
}
