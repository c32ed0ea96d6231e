using System.Text.Json;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Documents;

/// <summary>Something still to be said, as it is stored. It is removed once it was said.</summary>
internal static class OutboxDocument
{
    public const string Collection = "outbox";

    /// <summary>Place, then the order in which it was decided.</summary>
    public const string ByPlace = "byPlace";

    /// <summary>Grows with each message; unique among those that are stored.</summary>
    public const string Number = "number";

    public const string Case = "case";
    public const string Place = "place";

    public static BsonDocument ToBson(OutboxMessage m, string cardJson, long number) => Seal.Close(new BsonDocument
    {
        ["_id"] = m.Id,
        [ByPlace] = Keys.Join(m.Place, Keys.Number(number)),
        [Number] = number,
        [Case] = m.Case.Value,
        [Place] = m.Place,
        ["card"] = cardJson,
        ["decidedAt"] = Times.ToBson(m.DecidedAt),
        ["answers"] = m.Answers,
    });

    public static OutboxMessage FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new OutboxMessage(f.Text("_id"), new CaseId(f.Text(Case)), f.Text(Place), ReadCard(f), f.Time("decidedAt"), f.Text("answers"));
    }

    private static Card ReadCard(Fields f)
    {
        try
        {
            return CardJson.Read(f.Text("card"));
        }
        catch (JsonException)
        {
            throw f.Wrong("card", "a card that this version knows");
        }
    }
}
