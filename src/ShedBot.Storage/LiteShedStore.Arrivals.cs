using System.Collections.Immutable;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage;

/// <content>What was acknowledged before it was dealt with.</content>
public sealed partial class LiteShedStore
{
    public Task KeepArrivalAsync(Arrival arrival, CancellationToken ct)
    {
        var document = ArrivalDocument.ToBson(arrival);
        return writer.DoAsync(d => d.GetCollection(ArrivalDocument.Collection).Upsert(document), alone: false, ct);
    }

    public Task<ImmutableArray<Arrival>> ArrivalsAsync(CancellationToken ct) => readers.ReadAsync<ImmutableArray<Arrival>>(
        d => [.. Lookups.Query(d, ArrivalDocument.Collection).ToList().Select(ArrivalDocument.FromBson).OrderBy(a => a.At).ThenBy(a => a.Id, StringComparer.Ordinal)], ct);

    public Task DropArrivalAsync(string id, CancellationToken ct) =>
        writer.DoAsync(d => d.GetCollection(ArrivalDocument.Collection).Delete(id), alone: false, ct);
}
