using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Desk;

/// <summary>The coach of each club: the project's rules with the club's own word, as published at this moment.</summary>
public interface ICoaches
{
    /// <summary>Asked anew for each turn, so that what was published serves the next one.</summary>
    ValueTask<Coach> OfAsync(ClubId club, CancellationToken ct);

    /// <summary>The coach whose rules serve this member.</summary>
    ValueTask<Coach> OfAsync(MemberId member, CancellationToken ct) => OfAsync(ClubId.Serving(member), ct);
}

/// <summary>One coach for whoever comes.</summary>
/// <param name="coach">Asked each time, so that rules changed while running serve the next turn.</param>
public sealed class OneCoach(Func<Coach> coach) : ICoaches
{
    public ValueTask<Coach> OfAsync(ClubId club, CancellationToken ct) => ValueTask.FromResult(coach());
}
