namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Which flags may be set on which message. Source: the platform's message reference and its pages on interactions; that a forum
/// post may begin with a message of components only is not stated there, so it is refused.</summary>
internal static class FlagRules
{
    private const long NoEmbeds = 1 << 2, Private = 1 << 6, Silent = 1 << 12, Voice = 1 << 13;

    public static IEnumerable<string> Of(Message message)
    {
        var allowed = message.How switch
        {
            Sending.New => NoEmbeds | Silent | Voice | Message.NewStyleFlag,
            Sending.ForumStart => NoEmbeds | Silent,
            Sending.Answer => NoEmbeds | Private | Silent | Voice | Message.NewStyleFlag,
            _ => NoEmbeds | Message.NewStyleFlag,
        };
        return Beyond(message.Flags, allowed, message.At);
    }

    /// <summary>A put-off answer: only whether it will be private counts.</summary>
    public static IEnumerable<string> OfPutOff(System.Text.Json.JsonElement data, string at) => Beyond(data.Whole("flags") ?? 0, Private, at);

    private static IEnumerable<string> Beyond(long flags, long allowed, string at) =>
        (flags & ~allowed) is not 0 and var beyond ? [$"{at}flags: {beyond} may not be set here"] : [];
}
