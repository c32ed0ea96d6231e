using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Layout 2 to 3: a bike keeps how it was ridden and what was serviced.</summary>
/// <remarks>Names are written out and not taken from the present mapping: that may change again, this step may not.</remarks>
internal static class RidingStep
{
    public static SchemaStep ToThree { get; } = new("How a bike was ridden and what was serviced", Change);

    private static BsonDocument Change(string collection, BsonDocument document)
    {
        if (collection == "bikes")
        {
            document["riding"] = new BsonDocument
            {
                ["days"] = new BsonArray(),
                ["folded"] = BsonValue.Null,
                ["breaks"] = new BsonArray(),
                ["pace"] = BsonValue.Null,
                ["last"] = BsonValue.Null,
            };
            document["done"] = new BsonArray();
            document["handled"] = new BsonArray();
        }

        return document;
    }
}
