using System.Text;
using LiteDB;

namespace ShedBot.Storage.Documents;

/// <summary>
/// Half of a surrogate pair can come out of a cut text and has no bytes in UTF-8; LiteDB refuses to store it. It is replaced by U+FFFD, as the
/// Unicode standard (section 3.9) says, so that one odd letter never costs a member their turn.
/// </summary>
internal static class WellFormed
{
    public static BsonValue Of(BsonValue value) => value switch
    {
        { IsString: true } when value.AsString.AsSpan().ContainsAnyInRange('\ud800', '\udfff') =>
            Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(value.AsString)),
        { IsArray: true } => new BsonArray(value.AsArray.Select(Of)),
        { IsDocument: true } => Of(value.AsDocument),
        _ => value,
    };

    private static BsonDocument Of(BsonDocument document)
    {
        foreach (var name in document.Keys.ToList())
        {
            document[name] = Of(document[name]);
        }

        return document;
    }
}
