using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>A turn made ready to be written: all that can be wrong with it shows here, before the writer is bothered.</summary>
internal sealed record TurnDocuments(
    TurnSaved Turn, BsonDocument Case, BsonDocument? Bike, BsonDocument? Outcome, BsonDocument? Owner, ImmutableArray<(OutboxMessage Message, string Card)> Say)
{
    /// <exception cref="ArgumentException">The turn does not hang together.</exception>
    public static TurnDocuments Of(TurnSaved turn)
    {
        var (c, bike, outcome, say, owner, unheard) = turn;
        ArgumentOutOfRangeException.ThrowIfLessThan(c.Version, 1, "case version");
        ThrowUnless(bike is null || (bike.Id == c.Bike && bike.Version >= 1), "The bike is not the one of the case, or has no version.");
        ThrowUnless(outcome is null || outcome.Case == c.Id, "The outcome is of another case.");
        ThrowUnless(owner is null || (owner.Member == c.Member && owner.Version >= 1), "The rider is not the member of the case, or has no version.");
        ThrowUnless(say.All(m => m.Case == c.Id), "A message is of another case.");
        ThrowUnless(unheard is null || IsKept(unheard, ClubId.Serving(c.Member)), "Words that were not understood are of another club's member, or too long.");
        return new TurnDocuments(
            turn,
            CaseDocument.ToBson(c, say.Select(m => m.Id)),
            bike is null ? null : BikeDocument.ToBson(bike),
            outcome is null ? null : OutcomeDocument.ToBson(outcome),
            owner is null ? null : RiderDocument.ToBson(owner),
            OutboxWriter.Ready(say));
    }

    /// <summary>Whether words that were not understood can be kept for a club.</summary>
    public static bool IsKept(UnheardWords unheard, ClubId club) =>
        ClubKeys.Checked(unheard.Member, club).Length > 0 && unheard.Words.Length is > 0 and <= UnheardWords.Longest && unheard.Expected.Length <= Keys.MaxBytes;

    private static void ThrowUnless(bool holds, string problem)
    {
        if (!holds)
        {
            throw new ArgumentException(problem);
        }
    }
}
