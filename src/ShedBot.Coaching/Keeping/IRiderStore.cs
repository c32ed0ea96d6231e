using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Keeping;

/// <summary>Where members' wishes about reminders are kept, and what they were told. Everything acknowledged survives the death of the process.</summary>
public interface IRiderStore
{
    Task<Rider?> FindRiderAsync(MemberId member, CancellationToken ct);

    /// <summary>Those whose next look has come, longest waiting first. Reads these only, however many are kept.</summary>
    /// <param name="limit">1 to 10,000.</param>
    Task<ImmutableArray<Rider>> DueRidersAsync(DateTimeOffset now, int limit, CancellationToken ct);

    /// <summary>Keeps the rider, their bikes that changed and what was decided to be said to them, as a whole or not at all, and returns once it is safe on the disk.</summary>
    /// <param name="rider">The rider after; its version is one above the version that was read.</param>
    /// <param name="bikes">Bikes of the rider after; each version is one above the version that was read.</param>
    /// <param name="say">In order; all in the place of the rider's reminders.</param>
    /// <exception cref="StaleSaveException">Somebody saved the rider or a bike since it was read; read again and decide again.</exception>
    Task SaveRiderAsync(Rider rider, ImmutableArray<BikeProfile> bikes, ImmutableArray<OutboxMessage> say, CancellationToken ct);
}
