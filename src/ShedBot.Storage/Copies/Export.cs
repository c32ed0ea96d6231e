using System.Text.Encodings.Web;
using System.Text.Json;
using LiteDB;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Copies;

/// <summary>
/// Everything as JSON lines, for the day when this file format is no more: a line each document, <c>{"in":"cases","document":{…}}</c>.
/// Each document is whole; saves made meanwhile may or may not be in it. For one moment in time, take a backup and export that.
/// </summary>
internal static class Export
{
    private const int AtOnce = 500;
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static async Task<int> WriteAsync(Readers readers, Stream to, CancellationToken ct)
    {
        var count = 0;
        foreach (var collection in Shelf.All.Select(s => s.Collection))
        {
            BsonValue after = BsonValue.MinValue;
            List<BsonDocument> some;
            do
            {
                var from = after;
                some = await readers.ReadAsync(db => Next(db, collection, from), ct);
                foreach (var document in some)
                {
                    await to.WriteAsync(Line(collection, document), ct);
                    after = document["_id"];
                    count++;
                }
            }
            while (some.Count == AtOnce);
        }

        await to.FlushAsync(ct);
        return count;
    }

    private static List<BsonDocument> Next(LiteDatabase db, string collection, BsonValue after) =>
        db.GetCollection(collection).Query().Where("$._id > @0", after).OrderBy("$._id").Limit(AtOnce).ToList();

    private static ReadOnlyMemory<byte> Line(string collection, BsonDocument document)
    {
        var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Readable))
        {
            json.WriteStartObject();
            json.WriteString("in", collection);
            json.WritePropertyName("document");
            BsonJson.Write(json, document);
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
    }
}
