using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>A file to take away.</summary>
/// <param name="MediaType">As registered with IANA.</param>
public sealed record CopyFile(string Name, string MediaType, ImmutableArray<byte> Bytes);

/// <summary>All that is kept of bikes, as files: tables by RFC 4180 and the whole as JSON by RFC 8259, all in UTF-8.</summary>
/// <remarks>Days are those of the rider; times are UTC. Distances are kilometres and times are hours, whatever units the rider thinks in.</remarks>
public static class BikeCopy
{
    public static ImmutableArray<CopyFile> Files(BikeProfile bike, KnowledgeBase knowledge) =>
    [
        new("facts.csv", "text/csv", [.. Encoding.UTF8.GetBytes(Facts(bike, knowledge))]),
        new("rides.csv", "text/csv", [.. Encoding.UTF8.GetBytes(Rides(bike))]),
        new("work.csv", "text/csv", [.. Encoding.UTF8.GetBytes(Work(bike, knowledge))]),
        new("bike.json", "application/json", [.. Json(bike)]),
    ];

    /// <summary>With more than one bike the files of each begin with its name.</summary>
    public static ImmutableArray<CopyFile> Files(ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge) =>
        bikes is [var only] ? Files(only, knowledge) : [.. bikes.SelectMany(b => Files(b, knowledge).Select(f => f with { Name = $"{Slug(b, bikes)}-{f.Name}" }))];

    /// <summary>Letters and digits of the name that every file system takes; the short id where none are left, or another bike has the same.</summary>
    private static string Slug(BikeProfile bike, ImmutableArray<BikeProfile> bikes)
    {
        var plain = Plain(bike);
        return plain.Length == 0 || bikes.Count(b => Plain(b) == plain) > 1 ? NudgeAnswer.ShortOf(bike) : plain;

        static string Plain(BikeProfile b) => string.Join('-', b.Name.ToLowerInvariant().Split(' ').Select(w => string.Concat(w.Where(char.IsAsciiLetterOrDigit))).Where(w => w.Length > 0));
    }

    private static string Facts(BikeProfile bike, KnowledgeBase knowledge) => Table(
        ["id", "what", "value", "learnt", "how"],
        bike.Facts.Select(f => new[]
        {
            f.Key, BikeSheet.Find(knowledge, f.Key)?.Called ?? knowledge.Facts.GetValueOrDefault(f.Key)?.Called ?? f.Key, f.Value.Value,
            f.Value.Learnt.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture), f.Value.How,
        }));

    private static string Rides(BikeProfile bike) => Table(
        ["day", "kilometres", "hours", "weather"],
        bike.Riding.Days.Select(d => new[] { Day(d.Day), Number(d.Kilometres), Number(d.Hours), Name(d.Weather) }));

    private static string Work(BikeProfile bike, KnowledgeBase knowledge) => Table(
        ["day", "kind", "id", "what", "how"],
        bike.Work.Select(w => (At: w.At, Row: new[] { w.At.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "repair", w.Repair, w.What, "case" }))
            .Concat(bike.Done.Select(d => (At: d.LoggedAt, Row: new[] { Day(d.Day), "service", d.Task, knowledge.Service.GetValueOrDefault(d.Task)?.Called ?? d.Task, d.How })))
            .OrderBy(r => r.Row[0], StringComparer.Ordinal).ThenBy(r => r.At).Select(r => r.Row));

    private static string Table(string[] heads, IEnumerable<string[]> rows) =>
        string.Concat(rows.Prepend(heads).Select(row => string.Join(',', row.Select(Cell)) + "\r\n"));

    private static string Cell(string text) =>
        text.AsSpan().ContainsAny(',', '"', '\n') || text.Contains('\r', StringComparison.Ordinal) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private static byte[] Json(BikeProfile bike)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.Create(System.Text.Unicode.UnicodeRanges.All) }))
        {
            json.WriteStartObject();
            json.WriteString("name", bike.Name);
            json.WriteStartObject("facts");
            foreach (var (id, fact) in bike.Facts)
            {
                json.WriteStartObject(id);
                json.WriteString("value", fact.Value);
                json.WriteString("learnt", fact.Learnt);
                json.WriteString("how", fact.How);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            WriteRiding(json, bike.Riding);
            List(json, "services", bike.Done, d =>
            {
                json.WriteString("task", d.Task);
                json.WriteString("day", Day(d.Day));
                json.WriteString("logged", d.LoggedAt);
                json.WriteString("how", d.How);
                if (d.Case is { } of) json.WriteString("case", of.Value);
            });
            List(json, "repairs", bike.Work, w =>
            {
                json.WriteString("repair", w.Repair);
                json.WriteString("what", w.What);
                json.WriteString("case", w.Case.Value);
                json.WriteString("at", w.At);
            });
            json.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void WriteRiding(Utf8JsonWriter json, RidingLog riding)
    {
        if (riding.Pace is { } pace)
        {
            json.WriteStartObject("pace");
            json.WriteNumber("daysPerWeek", pace.DaysPerWeek);
            Amounts(json, pace.KilometresPerDay, pace.HoursPerDay);
            json.WriteString("since", Day(pace.Since));
            json.WriteEndObject();
        }

        if (riding.Folded is { } folded)
        {
            json.WriteStartObject("olderRides");
            json.WriteString("first", Day(folded.First));
            json.WriteString("last", Day(folded.Last));
            List(json, "totals", folded.Totals, t =>
            {
                json.WriteString("weather", Name(t.Weather));
                json.WriteNumber("days", t.Days);
                json.WriteNumber("kilometres", t.Kilometres);
                json.WriteNumber("hours", t.Hours);
            });
            json.WriteEndObject();
        }

        List(json, "rides", riding.Days, d =>
        {
            json.WriteString("day", Day(d.Day));
            Amounts(json, d.Kilometres, d.Hours);
            json.WriteString("weather", Name(d.Weather));
        });
        List(json, "notRiding", riding.Breaks, b =>
        {
            json.WriteString("from", Day(b.From));
            if (b.Until is { } until) json.WriteString("until", Day(until));
        });
    }

    private static void Amounts(Utf8JsonWriter json, double? kilometres, double? hours)
    {
        if (kilometres is { } km) json.WriteNumber("kilometres", km);
        if (hours is { } h) json.WriteNumber("hours", h);
    }

    private static void List<T>(Utf8JsonWriter json, string name, ImmutableArray<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Name(Weather weather) => weather.ToString().ToLowerInvariant();

    private static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);

    private static string Number(double? amount) => amount?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
