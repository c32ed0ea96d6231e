using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Embeds, each and all together. Source: the platform's message reference, "Embed limits".</summary>
internal static class EmbedRules
{
    private const int MostTogether = 6000;

    public static IEnumerable<string> Of(JsonElement message, string at)
    {
        var embeds = message.Items("embeds");
        var together = embeds.Sum(Letters);
        return
        [
            .. Bounds.Count(message, "embeds", 0, 10, at),
            .. embeds.Index().SelectMany(embed => One(embed.Item, $"{at}embeds[{embed.Index}].")),
            .. together > MostTogether ? new[] { $"{at}embeds: at most {MostTogether} characters over all, not {together}" } : [],
        ];
    }

    private static IEnumerable<string> One(JsonElement embed, string at) =>
    [
        .. Bounds.Length(embed, "title", 0, 256, at),
        .. Bounds.Length(embed, "description", 0, 4096, at),
        .. Bounds.Length(embed, "url", 0, 2048, at),
        .. Bounds.Range(embed, "color", 0, 0xFFFFFF, at),
        .. embed.Field("footer") is { } footer ? Bounds.Needed(footer, "text", 1, 2048, $"{at}footer.") : [],
        .. embed.Field("author") is { } author ? Bounds.Needed(author, "name", 1, 256, $"{at}author.") : [],
        .. Bounds.Count(embed, "fields", 0, 25, at),
        .. embed.Items("fields").Index().SelectMany(field => Field(field.Item, $"{at}fields[{field.Index}].")),
    ];

    private static IEnumerable<string> Field(JsonElement field, string at) =>
        Bounds.Needed(field, "name", 1, 256, at).Concat(Bounds.Needed(field, "value", 1, 1024, at));

    private static int Letters(JsonElement embed) =>
        Long(embed, "title") + Long(embed, "description")
        + (embed.Field("footer") is { } footer ? Long(footer, "text") : 0)
        + (embed.Field("author") is { } author ? Long(author, "name") : 0)
        + embed.Items("fields").Sum(field => Long(field, "name") + Long(field, "value"));

    private static int Long(JsonElement holder, string field) => holder.Text(field)?.Length ?? 0;
}
