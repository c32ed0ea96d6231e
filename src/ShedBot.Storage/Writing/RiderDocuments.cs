using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>A rider and what is said to them made ready to be written: all that can be wrong shows here, before the writer is bothered.</summary>
internal sealed record RiderDocuments(BsonDocument Rider, ImmutableArray<OutboxMessage> Say, ImmutableArray<string> CardTexts)
{
    /// <exception cref="ArgumentException">A message is said elsewhere than in the place of the rider's reminders.</exception>
    public static RiderDocuments Of(Rider rider, ImmutableArray<OutboxMessage> say)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rider.Version, 1, "rider version");
        foreach (var message in say)
        {
            Keys.Checked(message.Id, "message id");
            if (Keys.Checked(message.Place, "place") != Decision.PlaceOf(rider.Member))
            {
                throw new ArgumentException("A message is not in the place of the rider's reminders.", nameof(say));
            }
        }

        return new RiderDocuments(RiderDocument.ToBson(rider), say, [.. say.Select(m => CardJson.Write(m.Card))]);
    }
}
