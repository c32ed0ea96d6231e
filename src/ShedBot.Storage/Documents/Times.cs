using System.Globalization;
using LiteDB;

namespace ShedBot.Storage.Documents;

/// <summary>Times as they are stored: whole milliseconds since 1970-01-01 UTC. What is finer than a millisecond is cut off; the offset becomes zero.</summary>
internal static class Times
{
    private static readonly long YearOne = DateTimeOffset.MinValue.ToUnixTimeMilliseconds();

    public static BsonValue ToBson(DateTimeOffset time) => time.ToUnixTimeMilliseconds();

    public static BsonValue ToBson(DateTimeOffset? time) => time is { } t ? ToBson(t) : BsonValue.Null;

    public static DateTimeOffset FromBson(BsonValue value) => DateTimeOffset.FromUnixTimeMilliseconds(value.AsInt64);

    /// <summary>A text that sorts as the time does: milliseconds since the year 1, 15 digits, which is enough up to the year 9999.</summary>
    public static string Key(DateTimeOffset time) =>
        (time.ToUnixTimeMilliseconds() - YearOne).ToString("D15", CultureInfo.InvariantCulture);
}
