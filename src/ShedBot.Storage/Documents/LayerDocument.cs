using System.Text;
using LiteDB;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>The texts of an edition, under its key. They may be some hundred kilobytes long, so nothing that only lists editions reads them.</summary>
internal static class LayerDocument
{
    public const string Collection = "layers";
    public const string Layer = "layer";
    public const string Learnt = "learnt";

    /// <summary>The most bytes of one text, in UTF-8: four times what a club's rules may have, and far below what the file format takes.</summary>
    public const int MostBytes = 1 << 20;

    /// <exception cref="ArgumentException">A text is too long.</exception>
    public static BsonDocument ToBson(RulesEdition e) => Seal.Close(new BsonDocument
    {
        ["_id"] = ClubKeys.Of(e.Club, e.Number),
        [Layer] = Checked(e.Layer),
        [Learnt] = Checked(e.Learnt),
    });

    public static (string Layer, string Learnt) FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return (f.Text(Layer), f.Text(Learnt));
    }

    public static string Checked(string text) => Encoding.UTF8.GetByteCount(text) <= MostBytes
        ? text
        : throw new ArgumentException($"A text of more than {MostBytes} bytes is not kept.", nameof(text));
}
