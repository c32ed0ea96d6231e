using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>A rider, their bikes that changed and what is said to them made ready to be written: all that can be wrong shows here, before the writer is bothered.</summary>
internal sealed record RiderDocuments(BsonDocument Rider, ImmutableArray<BsonDocument> Bikes, ImmutableArray<(OutboxMessage Message, string Card)> Say)
{
    /// <exception cref="ArgumentException">A message is said elsewhere than in the place of the rider's reminders, or a bike is somebody else's.</exception>
    public static RiderDocuments Of(Rider rider, ImmutableArray<BikeProfile> bikes, ImmutableArray<OutboxMessage> say)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rider.Version, 1, "rider version");
        foreach (var bike in bikes)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(bike.Version, 1, "bike version");
            if (bike.Owner != rider.Member)
            {
                throw new ArgumentException("A bike is not the rider's.", nameof(bikes));
            }
        }

        foreach (var message in say)
        {
            if (message.Place != Decision.PlaceOf(rider.Member))
            {
                throw new ArgumentException("A message is not in the place of the rider's reminders.", nameof(say));
            }
        }

        return new RiderDocuments(RiderDocument.ToBson(rider), [.. bikes.Select(BikeDocument.ToBson)], OutboxWriter.Ready(say));
    }
}
