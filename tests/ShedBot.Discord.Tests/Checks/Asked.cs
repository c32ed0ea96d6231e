using System.Text.Json;
using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Requests as the checks see them, with headers that are in order.</summary>
internal static class Asked
{
    public const string Messages = "/channels/{channel_id}/messages";
    public const string OneMessage = "/channels/{channel_id}/messages/{message_id}";
    public const string Threads = "/channels/{channel_id}/threads";
    public const string Callback = "/interactions/{interaction_id}/{interaction_token}/callback";
    public const string Original = "/webhooks/{webhook_id}/{webhook_token}/messages/@original";
    public const string Further = "/webhooks/{webhook_id}/{webhook_token}";
    public const string Commands = "/applications/{application_id}/commands";
    public const string GuildCommands = "/applications/{application_id}/guilds/{guild_id}/commands";

    public static CheckedRequest To(string method, string route, string? json = null, params (string Name, string Value)[] query)
    {
        var headers = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase) { ["User-Agent"] = "DiscordBot (https://bot.invalid, 1.0.0)" };
        if (json is not null) headers["Content-Type"] = "application/json";
        if (!route.StartsWith("/interactions", StringComparison.Ordinal) && !route.StartsWith("/webhooks", StringComparison.Ordinal))
            headers["Authorization"] = "Bot made-up";
        return new CheckedRequest(
            method, route, route, query.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal),
            json is null ? null : JsonElement.Parse(json), [], headers);
    }

    public static CheckedRequest WithHeader(this CheckedRequest request, string name, string? value)
    {
        var headers = new Dictionary<string, string>(request.Headers, StringComparer.OrdinalIgnoreCase);
        if (value is null) headers.Remove(name);
        else headers[name] = value;
        return request with { Headers = headers };
    }

    /// <summary>The same request as a multipart one with these files beside its JSON.</summary>
    public static CheckedRequest WithFiles(this CheckedRequest request, params CheckedPart[] files) =>
        request.WithHeader("Content-Type", "multipart/form-data; boundary=x") with { Parts = [new CheckedPart("payload_json", null, 100), .. files] };

    /// <summary>The same request with a field put in place of whatever stood there; a null takes the field out.</summary>
    public static CheckedRequest With(this CheckedRequest request, string field, string? json)
    {
        var body = System.Text.Json.Nodes.JsonNode.Parse(request.Body!.Value.GetRawText())!.AsObject();
        if (json is null) body.Remove(field);
        else body[field] = System.Text.Json.Nodes.JsonNode.Parse(json);
        return request with { Body = JsonSerializer.SerializeToElement(body) };
    }

    public static string Repeat(char letter, int times) => new(letter, times);
}
