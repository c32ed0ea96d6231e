using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Layout 6 to 7: a club may choose numbers that are never learnt; what is noted of its learning is kept, in a collection of its own.</summary>
internal static class LearningStep
{
    public static SchemaStep ToSeven { get; } = new("What clubs never learn, and what is noted of their learning", Change);

    private static BsonDocument Change(string collection, BsonDocument document)
    {
        if (collection == "teaching")
        {
            document["off"] = new BsonArray();
        }

        return document;
    }
}
