using LiteDB;
using NodaTime;
using NodaTime.Text;

namespace ShedBot.Storage.Documents;

/// <summary>Days as they are stored: ISO 8601, <c>2026-05-03</c>, without a zone.</summary>
internal static class Days
{
    public static BsonValue ToBson(LocalDate day) => LocalDatePattern.Iso.Format(day);

    public static BsonValue ToBson(LocalDate? day) => day is { } d ? ToBson(d) : BsonValue.Null;

    public static LocalDate? Find(string text) => LocalDatePattern.Iso.Parse(text) is { Success: true } read ? read.Value : null;
}
