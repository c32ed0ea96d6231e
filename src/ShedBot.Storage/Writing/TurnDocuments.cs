using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>A turn made ready to be written: all that can be wrong with it shows here, before the writer is bothered.</summary>
internal sealed record TurnDocuments(
    TurnSaved Turn, BsonDocument Case, BsonDocument? Bike, BsonDocument? Outcome, BsonDocument? Owner, ImmutableArray<string> SayIds, ImmutableArray<string> CardTexts)
{
    /// <exception cref="ArgumentException">The turn does not hang together.</exception>
    public static TurnDocuments Of(TurnSaved turn)
    {
        var (c, bike, outcome, say, owner, _) = turn;
        ArgumentOutOfRangeException.ThrowIfLessThan(c.Version, 1, "case version");
        ThrowUnless(bike is null || (bike.Id == c.Bike && bike.Version >= 1), "The bike is not the one of the case, or has no version.");
        ThrowUnless(outcome is null || outcome.Case == c.Id, "The outcome is of another case.");
        ThrowUnless(owner is null || (owner.Member == c.Member && owner.Version >= 1), "The rider is not the member of the case, or has no version.");
        ThrowUnless(say.All(m => m.Case == c.Id), "A message is of another case.");
        ImmutableArray<string> ids = [.. say.Select(m => Keys.Checked(m.Id, "message id"))];
        ThrowUnless(ids.Distinct(StringComparer.Ordinal).Count() == ids.Length, "Two messages have the same id.");
        foreach (var message in say)
        {
            Keys.Checked(message.Place, "place");
        }

        return new TurnDocuments(
            turn,
            CaseDocument.ToBson(c, ids),
            bike is null ? null : BikeDocument.ToBson(bike),
            outcome is null ? null : OutcomeDocument.ToBson(outcome),
            owner is null ? null : RiderDocument.ToBson(owner),
            ids,
            [.. say.Select(m => CardJson.Write(m.Card))]);
    }

    private static void ThrowUnless(bool holds, string problem)
    {
        if (!holds)
        {
            throw new ArgumentException(problem);
        }
    }
}
