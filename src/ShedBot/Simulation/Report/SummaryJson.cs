using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShedBot.Simulation.Report;

/// <summary>A summary for machines: one JSON object, shares in [0, 1], times in minutes; what could not be measured is null.</summary>
internal static class SummaryJson
{
    private static readonly SummaryJsonContext Context = new(new JsonSerializerOptions(SummaryJsonContext.Default.Options)
    {
        Converters = { new NumberOrNull() },
    });

    public static string Of(Summary summary) => JsonSerializer.Serialize(summary, Context.Summary);

    /// <summary>JSON knows no 'not a number'.</summary>
    private sealed class NumberOrNull : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.Null ? double.NaN : reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value)) writer.WriteNumberValue(Math.Round(value, 6));
            else writer.WriteNullValue();
        }
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, IncludeFields = true)]
[JsonSerializable(typeof(Summary))]
internal sealed partial class SummaryJsonContext : JsonSerializerContext;
