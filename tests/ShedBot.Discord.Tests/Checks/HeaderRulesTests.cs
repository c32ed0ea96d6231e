using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Headers of requests. Source: the platform's API reference (user agent, authorisation, content type) and its audit log page
/// (reason of 1 to 512 characters, URL-encoded). The two agents are as the independent clients send them, their addresses changed.</summary>
public sealed class HeaderRulesTests
{
    private static readonly CheckedRequest Read = Asked.To("GET", Asked.Messages), Delete = Asked.To("DELETE", Asked.OneMessage);

    [Theory]
    [InlineData("DiscordBot (https://bot.invalid, 1.0.0)")]
    [InlineData("DiscordBot (https://bot.invalid, 14.28.1) Node.js/20.20.2")]
    [InlineData("DiscordBot (https://bot.invalid 2.2.2) Python/3.11 aiohttp/3.8.4")]
    public void Violations_AgentOfOthers_PassesWhenLenient(string agent) => Holds.Clean(Read.WithHeader("User-Agent", agent), Holds.Theirs);

    [Theory]
    [InlineData(null)]
    [InlineData("ShedBot/1.0")]
    [InlineData("DiscordBot")]
    [InlineData("DiscordBot (https://bot.invalid)")]
    [InlineData("DiscordBot (https://bot.invalid 1.0.0)")]
    public void Violations_BadAgent_Refused(string? agent) => Holds.Refuses("User-Agent: ", Read.WithHeader("User-Agent", agent));

    [Fact]
    public void Violations_LibrarysOwnAgentToAnInteraction_RefusedForOursOnly()
    {
        var press = Asked.To("POST", Asked.Callback, """{"type":6}""").WithHeader("User-Agent", "Python/3.11 aiohttp/3.8.4");
        Holds.Clean(press, Holds.Theirs);
        Holds.Refuses("User-Agent: ", press);
        Holds.Refuses("User-Agent: ", Read.WithHeader("User-Agent", "Python/3.11 aiohttp/3.8.4"), Holds.Theirs);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("made-up")]
    [InlineData("Bot ")]
    [InlineData("Bearer made-up")]
    public void Violations_NoBotToken_Refused(string? token) => Holds.Refuses("Authorization: must read Bot", Read.WithHeader("Authorization", token));

    [Theory]
    [InlineData("POST", Asked.Callback, """{"type":6}""")]
    [InlineData("POST", Asked.Further, """{"content":"x","allowed_mentions":{"parse":[]}}""")]
    [InlineData("DELETE", Asked.Original, null)]
    public void Violations_TokenOnAnInteractionsRoute_Refused(string method, string route, string? body)
    {
        Holds.Clean(Asked.To(method, route, body));
        Holds.Refuses("Authorization: the bot's token has no business", Asked.To(method, route, body).WithHeader("Authorization", "Bot made-up"));
    }

    [Fact]
    public void Violations_PlainGatewayQuestion_NeedsNoToken() => Holds.Clean(Asked.To("GET", "/gateway").WithHeader("Authorization", null));

    [Theory]
    [InlineData(null)]
    [InlineData("text/plain")]
    [InlineData("multipart/form-data; boundary=x")]
    public void Violations_JsonWithoutItsType_Refused(string? type) =>
        Holds.Refuses("Content-Type: must be application/json", Asked.To("PATCH", "/channels/{channel_id}", """{"archived":true}""").WithHeader("Content-Type", type));

    [Fact]
    public void Violations_Reason_EncodedAndUpTo512()
    {
        Holds.Clean(Delete.WithHeader("X-Audit-Log-Reason", Uri.EscapeDataString(Asked.Repeat('é', 512))));
        Holds.Refuses("X-Audit-Log-Reason: 1 to 512", Delete.WithHeader("X-Audit-Log-Reason", Uri.EscapeDataString(Asked.Repeat('é', 513))));
        Holds.Refuses("X-Audit-Log-Reason: must be percent-encoded", Delete.WithHeader("X-Audit-Log-Reason", "asked to"));
        Holds.Refuses("X-Audit-Log-Reason: reading", Read.WithHeader("X-Audit-Log-Reason", "asked"));
    }
}
