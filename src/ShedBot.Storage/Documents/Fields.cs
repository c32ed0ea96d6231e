using System.Collections.Immutable;
using LiteDB;
using NodaTime;

namespace ShedBot.Storage.Documents;

/// <summary>Reads the fields of a stored document and says plainly which one is wrong.</summary>
internal readonly struct Fields(string collection, string id, BsonDocument document)
{
    public static Fields Of(string collection, BsonDocument document)
    {
        Seal.Check(collection, document);
        return new Fields(collection, Seal.IdOf(document), document);
    }

    public string Text(string name) => Get(name) is { IsString: true } v ? v.AsString : throw Wrong(name, "a text");

    public string? TextOrNull(string name) => Get(name).IsNull ? null : Text(name);

    public int Whole(string name) => Get(name) is { IsInt32: true } v ? v.AsInt32 : throw Wrong(name, "a whole number");

    public long Long(string name) => Get(name) is { IsInt64: true } v ? v.AsInt64 : throw Wrong(name, "a whole number");

    public double Real(string name) => Get(name) is { IsDouble: true } v ? v.AsDouble : throw Wrong(name, "a number");

    public double? RealOrNull(string name) => Get(name).IsNull ? null : Real(name);

    public LocalDate Day(string name) => Days.Find(Text(name)) ?? throw Wrong(name, "a day");

    public LocalDate? DayOrNull(string name) => Get(name).IsNull ? null : Day(name);

    public bool Flag(string name) => Get(name) is { IsBoolean: true } v ? v.AsBoolean : throw Wrong(name, "true or false");

    public DateTimeOffset Time(string name) => Get(name) is { IsInt64: true } v ? Times.FromBson(v) : throw Wrong(name, "a time");

    public DateTimeOffset? TimeOrNull(string name) => Get(name).IsNull ? null : Time(name);

    public T Named<T>(string name)
        where T : struct, Enum
    {
        var text = Text(name);
        // Enum.TryParse takes numbers and lists too; only a name that is declared counts.
        return Enum.IsDefined(typeof(T), text) ? Enum.Parse<T>(text) : throw new StoredDocumentException(
            collection, id, $"'{name}' is '{text}', which this version does not know; a newer version may have written it.");
    }

    public Fields Part(string name) => Get(name) is { IsDocument: true } v ? new(collection, id, v.AsDocument) : throw Wrong(name, "a part");

    public Fields? PartOrNull(string name) => Get(name).IsNull ? null : Part(name);

    public ImmutableArray<T> List<T>(string name, Func<Fields, T> read)
    {
        var list = ImmutableArray.CreateBuilder<T>();
        foreach (var item in Array(name))
        {
            list.Add(read(new(collection, id, item.IsDocument ? item.AsDocument : throw Wrong(name, "a list of parts"))));
        }

        return list.ToImmutable();
    }

    public ImmutableArray<string> Texts(string name)
    {
        var list = ImmutableArray.CreateBuilder<string>();
        foreach (var item in Array(name))
        {
            list.Add(item.IsString ? item.AsString : throw Wrong(name, "a list of texts"));
        }

        return list.ToImmutable();
    }

    public StoredDocumentException Wrong(string name, string wanted) => new(collection, id, $"'{name}' is missing or is not {wanted}.");

    private BsonArray Array(string name) => Get(name) is { IsArray: true } v ? v.AsArray : throw Wrong(name, "a list");

    private BsonValue Get(string name) => document.TryGetValue(name, out var value) ? value : BsonValue.Null;
}
