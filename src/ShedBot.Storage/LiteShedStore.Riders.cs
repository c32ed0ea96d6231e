using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage.Reading;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage;

/// <content>Who wants to be reminded, and what they were told.</content>
public sealed partial class LiteShedStore
{
    public Task<Rider?> FindRiderAsync(MemberId member, CancellationToken ct) => readers.ReadAsync(d => RiderLookups.Rider(d, member), ct);

    public Task<ImmutableArray<Rider>> DueRidersAsync(DateTimeOffset now, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 10_000);
        return readers.ReadAsync(d => RiderLookups.Due(d, now, limit), ct);
    }

    /// <inheritdoc/>
    /// <remarks>The very same save may be made again, for when it is not known whether the first try landed.</remarks>
    public Task SaveRiderAsync(Rider rider, ImmutableArray<BikeProfile> bikes, ImmutableArray<OutboxMessage> say, CancellationToken ct)
    {
        var documents = RiderDocuments.Of(rider, bikes, say);
        return writer.DoAsync(d => turns.WriteRider(d, documents), alone: false, ct);
    }
}
