using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>Which shape a body is meant to have where the description allows several. The description lists them as "any of", which
/// would let a body pass as something it was not meant to be.</summary>
internal static class Branch
{
    /// <returns>The name of the shape, or null when none of those we use is meant.</returns>
    public static string? Meant(string method, string route, JsonElement body) => (method, route) switch
    {
        ("POST", "/interactions/{interaction_id}/{interaction_token}/callback") => Answer(body.Whole("type")),
        ("POST", "/channels/{channel_id}/threads") =>
            body.Field("message") is null ? "CreateTextThreadWithoutMessageRequest" : "CreateForumThreadRequest",
        ("PATCH", "/channels/{channel_id}") => "UpdateThreadRequestPartial",
        ("POST", "/webhooks/{webhook_id}/{webhook_token}") => "IncomingWebhookRequestPartial",
        _ => null,
    };

    private static string? Answer(long? type) => type switch
    {
        1 => "PongInteractionCallbackRequest",
        4 or 5 => "CreateMessageInteractionCallbackRequest",
        6 or 7 => "UpdateMessageInteractionCallbackRequest",
        8 => "ApplicationCommandAutocompleteCallbackRequest",
        9 => "ModalInteractionCallbackRequest",
        _ => null,
    };
}
