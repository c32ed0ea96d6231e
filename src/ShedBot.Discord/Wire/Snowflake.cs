using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShedBot.Discord.Wire;

/// <summary>An id of the platform: 64 bits, the upper 42 the milliseconds since the first second of 2015, UTC. <c>default</c> is none.</summary>
[JsonConverter(typeof(SnowflakeConverter))]
internal readonly record struct Snowflake(ulong Value) : IComparable<Snowflake>
{
    private const long FirstMillisecond = 1_420_070_400_000;
    private const int TimeShift = 22;

    public bool IsNone => Value == 0;

    public DateTimeOffset At => DateTimeOffset.FromUnixTimeMilliseconds((long)(Value >> TimeShift) + FirstMillisecond);

    public static bool operator <(Snowflake left, Snowflake right) => left.Value < right.Value;

    public static bool operator >(Snowflake left, Snowflake right) => left.Value > right.Value;

    public static bool operator <=(Snowflake left, Snowflake right) => left.Value <= right.Value;

    public static bool operator >=(Snowflake left, Snowflake right) => left.Value >= right.Value;

    /// <returns>The id, or null when the text is none.</returns>
    public static Snowflake? Read(string? text) =>
        ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value != 0 ? new Snowflake(value) : null;

    /// <summary>The least id of this moment: ids made later are greater.</summary>
    public static Snowflake First(DateTimeOffset at) => new((ulong)Math.Max(0, at.ToUnixTimeMilliseconds() - FirstMillisecond) << TimeShift);

    public int CompareTo(Snowflake other) => Value.CompareTo(other.Value);

    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Ids are texts on the wire; a number or null is taken as well, since both have been seen.</summary>
internal sealed class SnowflakeConverter : JsonConverter<Snowflake>
{
    public override bool HandleNull => true;

    public override Snowflake Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.String => Snowflake.Read(reader.GetString()) ?? default,
        JsonTokenType.Number when reader.TryGetUInt64(out var number) => new Snowflake(number),
        JsonTokenType.Null => default,
        _ => throw new JsonException("An id must be a text of digits."),
    };

    public override void Write(Utf8JsonWriter writer, Snowflake value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());

    public override Snowflake ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Snowflake.Read(reader.GetString()) ?? default;

    public override void WriteAsPropertyName(Utf8JsonWriter writer, Snowflake value, JsonSerializerOptions options) =>
        writer.WritePropertyName(value.ToString());
}
