using System.Collections.Immutable;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Keeping;

/// <summary>
/// Something a member did that was acknowledged before it was dealt with. Kept until it is dealt with, so that nobody who was told to wait waits for a
/// process that has died.
/// </summary>
/// <param name="Id">The event, as the chat names it; 1 to 300 bytes.</param>
/// <param name="Content">What the chat needs to deal with it later, in the chat's own writing; not read here.</param>
/// <param name="At">When it came in, to the millisecond.</param>
public sealed record Arrival(string Id, MemberId Member, string Content, DateTimeOffset At);

/// <summary>Where arrivals are kept. Everything acknowledged survives the death of the process. They are few: each goes as soon as it is dealt with.</summary>
public interface IArrivalStore
{
    /// <summary>Keeps it; the same one again changes nothing.</summary>
    Task KeepArrivalAsync(Arrival arrival, CancellationToken ct);

    /// <summary>All that is kept, oldest first.</summary>
    Task<ImmutableArray<Arrival>> ArrivalsAsync(CancellationToken ct);

    /// <summary>It is dealt with. One that is not there was dropped before.</summary>
    Task DropArrivalAsync(string id, CancellationToken ct);
}
