using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Trials;

/// <summary>A report as JSON text, in which it is kept. Same report, same text.</summary>
public static class TrialReportJson
{
    private static readonly TrialReportJsonContext Context = new(new JsonSerializerOptions(TrialReportJsonContext.Default.Options)
    {
        // Letters beyond ASCII stay readable: the text is kept in a file and is never put into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static string Write(TrialReport report) => JsonSerializer.Serialize(report, Context.TrialReport);

    /// <exception cref="JsonException">The text is no report.</exception>
    public static TrialReport Read(string json) =>
        JsonSerializer.Deserialize(json, Context.TrialReport) ?? throw new JsonException("The text holds no report.");
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(TrialReport))]
internal sealed partial class TrialReportJsonContext : JsonSerializerContext;
