using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;

namespace ShedBot.Storage.Tests;

/// <summary>
/// Compares records that hold lists, whose own equality looks at the list and not at what is in it: both are written out by
/// System.Text.Json, by reflection and not by the code under test.
/// </summary>
public static class Same
{
    public static readonly JsonSerializerOptions Plain =
        new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, Converters = { new DayInWords() } };

    public static string Text<T>(T value) => JsonSerializer.Serialize(value, Plain);

    public static void Assert<T>(T expected, T actual) => Xunit.Assert.Equal(Text(expected), Text(actual));

    /// <summary>A day by its parts: by reflection it would be written with its whole calendar.</summary>
    private sealed class DayInWords : JsonConverter<LocalDate>
    {
        public override LocalDate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, LocalDate value, JsonSerializerOptions options) =>
            writer.WriteStringValue($"{value.Year}-{value.Month}-{value.Day}");
    }
}
