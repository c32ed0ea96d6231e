using System.Globalization;
using Microsoft.AspNetCore.Http;
using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>A 429, as one of its scopes, with its body or without.</summary>
internal sealed record Limits(string Scope, bool WithBody, FaultKind? Kind)
{
    private static readonly (FaultKind Kind, string Scope)[] Kinds =
    [
        (FaultKind.RateLimitedUser, "user"), (FaultKind.RateLimitedShared, "shared"),
        (FaultKind.RateLimitedGlobal, "global"), (FaultKind.RateLimitedWithoutBody, "user"),
    ];

    public static Limits Real(string scope) => new(scope, true, null);

    public static Limits? Injected(FaultInjector faults, string route)
    {
        foreach (var (kind, scope) in Kinds)
        {
            if (faults.Draw(kind, route))
                return new Limits(scope, kind != FaultKind.RateLimitedWithoutBody, kind);
        }
        return null;
    }

    public Task WriteAsync(HttpContext context, TimeSpan retryAfter)
    {
        var seconds = Math.Max(0.001, retryAfter.TotalSeconds);
        var headers = context.Response.Headers;
        context.Response.StatusCode = 429;
        // The header has whole seconds, the body the exact ones.
        headers.RetryAfter = Math.Ceiling(seconds).ToString(CultureInfo.InvariantCulture);
        headers["X-RateLimit-Scope"] = Scope;
        headers["X-RateLimit-Reset-After"] = seconds.ToString("F3", CultureInfo.InvariantCulture);
        headers["X-RateLimit-Remaining"] = "0";
        if (Scope == "global")
            headers["X-RateLimit-Global"] = "true";
        if (!WithBody)
            return Task.CompletedTask;
        context.Response.ContentType = "application/json";
        var global = Scope == "global" ? "true" : "false";
        return context.Response.WriteAsync(string.Create(CultureInfo.InvariantCulture,
            $$"""{"message":"You are being rate limited.","retry_after":{{seconds:F3}},"global":{{global}}}"""));
    }
}
