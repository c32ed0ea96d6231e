using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching;

/// <summary>Somebody who acts on a club's rules, as the platform told of them with this very act.</summary>
/// <param name="Name">How the club calls them; text of theirs, to be quoted and never to be trusted.</param>
/// <param name="Rights">What they may do at this moment.</param>
public sealed record Teacher(ClubId Club, MemberId Who, string Name, TeachingRights Rights)
{
    public bool May(TeachingRights right) => (Rights & right) == right;
}
