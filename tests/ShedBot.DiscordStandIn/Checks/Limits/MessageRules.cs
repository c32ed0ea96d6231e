namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>A message as a whole. Source: the platform's message reference; 2000 characters of content is the page's figure, the published
/// description allows more.</summary>
internal static class MessageRules
{
    public static IEnumerable<string> Of(Message message) =>
    [
        .. FlagRules.Of(message),
        .. Bounds.Length(message.Body, "content", 0, 2000, message.At),
        .. Exclusive(message),
        .. Empty(message),
        .. Nonce(message),
        .. MentionRules.Of(message),
        .. EmbedRules.Of(message.Body, message.At),
        .. ComponentRules.InMessage(message.Body, message.NewStyle, message.At),
        .. AttachmentRules.Of(message),
    ];

    /// <summary>A message built of components has nothing else in it.</summary>
    private static IEnumerable<string> Exclusive(Message message)
    {
        if (message.NewStyle is not true) yield break;
        foreach (var field in new[] { "content", "embeds", "poll", "sticker_ids" })
            if (message.Body.Field(field) is { } value && !(value.ValueKind is System.Text.Json.JsonValueKind.Array && value.GetArrayLength() == 0))
                yield return $"{message.At}{field}: not beside the flag for components only";
        if (message.IsNew && message.Body.Items("components").Count == 0)
            yield return $"{message.At}components: a message of components only needs some";
    }

    private static IEnumerable<string> Empty(Message message)
    {
        if (message.IsNew && message.NewStyle is not true && !message.Speaks && message.Body.Items("sticker_ids").Count == 0 && message.Body.Field("poll") is null && message.Parts.Count == 0)
            yield return $"{message.At}content: an empty message cannot be sent";
    }

    private static IEnumerable<string> Nonce(Message message)
    {
        foreach (var reason in Bounds.Length(message.Body, "nonce", 1, 25, message.At)) yield return reason;
        if (message.Body.Says("enforce_nonce") && message.Body.Field("nonce") is null)
            yield return $"{message.At}nonce: enforce_nonce without one means nothing";
        if (message.Ours && message.Body.Field("nonce") is not null && !message.Body.Says("enforce_nonce"))
            yield return $"{message.At}enforce_nonce: a nonce without it does not stop a second copy";
    }
}
