using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The first answer to an interaction, by its type. Source: the platform's pages on receiving and responding to interactions.</summary>
internal static class AnswerRules
{
    private const string At = "data.";

    public static IEnumerable<string> Of(JsonElement body, IReadOnlyList<CheckedPart> parts, bool ours) => (body.Whole("type"), body.Field("data")) switch
    {
        (4, { } data) => MessageRules.Of(new Message(data, Sending.Answer, parts, ours, At)),
        (5, { } data) => PutOff(data, ours),
        (5 or 6, null) => [],
        (6, not null) => ours ? ["data: nothing can be said while putting off"] : [],
        (7, { } data) => MessageRules.Of(new Message(data, Sending.Edit, parts, ours, At)),
        (8, { } data) => Suggestions(data),
        (9, { } data) => ModalRules.Of(data, ours, At),
        (4 or 7 or 8 or 9, null) => ["data: is needed"],
        var (type, _) => [$"type: an answer is 4 to 9, not {type}"],
    };

    private static IEnumerable<string> PutOff(JsonElement data, bool ours)
    {
        foreach (var reason in FlagRules.OfPutOff(data, At)) yield return reason;
        if (ours && data.ValueKind is JsonValueKind.Object)
            foreach (var field in data.EnumerateObject().Where(field => field.Name != "flags"))
                yield return $"{At}{field.Name}: nothing can be said while putting off";
    }

    private static IEnumerable<string> Suggestions(JsonElement data)
    {
        if (data.Field("choices") is null) yield return $"{At}choices: is needed";
        foreach (var reason in Bounds.Count(data, "choices", 0, 25, At)) yield return reason;
        foreach (var (index, choice) in data.Items("choices").Index())
            foreach (var reason in CommandRules.Choice(choice, $"{At}choices[{index}].")) yield return reason;
    }
}
