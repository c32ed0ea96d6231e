using System.Text.Json;
using ShedBot.DiscordStandIn.Checks.Limits;

namespace ShedBot.DiscordStandIn.Checks;

/// <summary>Holds every request against the limits of the platform's own pages and, for our own client, our habits on top. Written
/// apart from the published description, which is laxer in places and silent on how fields go together.</summary>
public sealed class LimitsCheck(Strictness strictness) : IRequestCheck
{
    private bool Ours => strictness is Strictness.Strict;

    public IEnumerable<string> Violations(CheckedRequest request)
    {
        try
        {
            return [.. HeaderRules.Of(request, Ours), .. FileRules.Of(request, Ours), .. request.Body is { } body ? OfBody(request, body) : []];
        }
        catch (InvalidOperationException)
        {
            // JSON lets half a surrogate pair be written as an escape; such a text cannot be read as a string.
            return ["body: holds a text that is not Unicode"];
        }
    }

    private IEnumerable<string> OfBody(CheckedRequest request, JsonElement body) => (request.Method, request.Route) switch
    {
        ("POST", "/channels/{channel_id}/messages") => Said(request, body, Sending.New),
        ("PATCH", "/channels/{channel_id}/messages/{message_id}") => Said(request, body, Sending.Edit),
        ("POST", "/webhooks/{webhook_id}/{webhook_token}") => Said(request, body, Sending.Answer),
        ("PATCH", var route) when HeaderRules.IsInteraction(route) => Said(request, body, Sending.Edit),
        ("POST", "/interactions/{interaction_id}/{interaction_token}/callback") => AnswerRules.Of(body, request.Parts, Ours),
        ("POST", "/channels/{channel_id}/messages/{message_id}/threads") => ThreadRules.OnMessage(body),
        ("POST", "/channels/{channel_id}/threads") => ThreadRules.Alone(body, request.Parts, Ours),
        ("PATCH", "/channels/{channel_id}") => ThreadRules.Change(body),
        ("POST", "/users/@me/channels") => body.Field("recipient_id") is null ? ["recipient_id: is needed"] : [],
        ("PUT", "/applications/{application_id}/commands") => CommandRules.List(body, everywhere: true, Ours),
        ("PUT", "/applications/{application_id}/guilds/{guild_id}/commands") => CommandRules.List(body, everywhere: false, Ours),
        ("POST", "/applications/{application_id}/commands") => CommandRules.One(body, everywhere: true, Ours, ""),
        ("POST", "/applications/{application_id}/guilds/{guild_id}/commands") => CommandRules.One(body, everywhere: false, Ours, ""),
        _ => [],
    };

    private IEnumerable<string> Said(CheckedRequest request, JsonElement body, Sending how) =>
        MessageRules.Of(new Message(body, how, request.Parts, Ours, ""));
}
