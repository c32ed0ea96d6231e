using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Hearing;

/// <summary>What was heard, as one line of JSON. The names of the fields are a promise to scripts.</summary>
internal static class HeardJson
{
    /// <summary>Characters of the message that are shown beside what was heard in it.</summary>
    private const int MostShown = 200;

    /// <summary>Letters of every script stand as they are: the text is cleaned before, and this is no web page.</summary>
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(string message, Understood heard)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, Readable))
        {
            json.WriteStartObject();
            json.WriteString("text", CleanText.OneLine(message, MostShown));
            List(json, "complaints", heard.Complaints, c => Scored(json, "id", c.Id, null, c.Score));
            List(json, "denied", heard.Denied, json.WriteStringValue);
            List(json, "findings", heard.Findings, f => Scored(json, "finding", f.Subject, ("state", f.State), f.Score));
            List(json, "facts", heard.Facts, f => Scored(json, "fact", f.Subject, ("value", f.State), f.Score));
            json.WriteString("emergency", heard.Emergency);
            json.WriteString("how_to", heard.HowTo?.Id);
            json.WriteBoolean("not_mine", heard.NotMine);
            json.WriteString("not_mine_because", heard.NotMineBecause);
            json.WriteString("could_be_either", heard.Either);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void List<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items) write(item);
        json.WriteEndArray();
    }

    private static void Scored(Utf8JsonWriter json, string name, string id, (string Name, string Value)? more, double score)
    {
        json.WriteStartObject();
        json.WriteString(name, id);
        if (more is { } pair) json.WriteString(pair.Name, pair.Value);
        json.WriteNumber("score", score);
        json.WriteEndObject();
    }
}
