using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Cards;

/// <summary>A card as JSON text, in which it is kept until it was said. Same card, same text.</summary>
public static class CardJson
{
    // Letters beyond ASCII stay readable: the text is kept in a file and is never put into a page.
    private static readonly CardJsonContext Context = new(new JsonSerializerOptions(CardJsonContext.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static string Write(Card card) => JsonSerializer.Serialize(card, Context.Card);

    /// <exception cref="JsonException">The text is no card, or holds a kind of block or option that is not known here.</exception>
    public static Card Read(string json) =>
        JsonSerializer.Deserialize(json, Context.Card) ?? throw new JsonException("The text holds no card.");
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(Card))]
internal sealed partial class CardJsonContext : JsonSerializerContext;
