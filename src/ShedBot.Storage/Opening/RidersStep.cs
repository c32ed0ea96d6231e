using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Layout 3 to 4: members' wishes about reminders are kept, in a collection of their own; and a bike knows which events made its entries.</summary>
/// <remarks>The first files of layout 3 were written before bikes knew that, later ones after: both are met.</remarks>
internal static class RidersStep
{
    public static SchemaStep ToFour { get; } = new("Who wants to be reminded, and what they were told", Change);

    private static BsonDocument Change(string collection, BsonDocument document)
    {
        if (collection == "bikes" && !document.ContainsKey("handled"))
        {
            document["handled"] = new BsonArray();
        }

        return document;
    }
}
