namespace ShedBot.Storage.Opening;

/// <summary>Layout 4 to 5: members have units of their own, and a bike that they talk of unless they name another.</summary>
internal static class OwnSettingsStep
{
    public static SchemaStep ToFive { get; } = new("Members' own units, and the bike they talk of", (collection, document) =>
    {
        if (collection == "riders")
        {
            document["units"] = LiteDB.BsonValue.Null;
            document["bike"] = LiteDB.BsonValue.Null;
        }

        return document;
    });
}
