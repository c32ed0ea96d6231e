using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Layout 1 to 2: clubs and rooms are kept, a message knows what it answers, and a member's last case in a place is found at once.</summary>
/// <remarks>Names and key are written out and not taken from the present mapping: that may change again, this step may not.</remarks>
internal static class RoomsStep
{
    public static SchemaStep ToTwo { get; } = new("What a message answers; cases by member, place and last turn", Change);

    private static BsonDocument Change(string collection, BsonDocument document)
    {
        switch (collection)
        {
            case "outbox":
                document["answers"] = "";
                break;
            case "cases":
                // The time as it stands in the key by member.
                var byMember = document["byMember"].AsString;
                var time = byMember[(byMember.LastIndexOf('\n') + 1)..];
                document["byPlace"] = $"{document["member"].AsString}\n{document["place"].AsString}\n{time}{document["_id"].AsString}";
                break;
        }

        return document;
    }
}
