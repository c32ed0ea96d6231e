using System.Collections.Immutable;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching;

/// <summary>Whether what is counted from mended cases moves the rules. Stored by name: never rename a member.</summary>
public enum LearningMode
{
    /// <summary>It is counted and shown; nothing moves.</summary>
    Off,

    /// <summary>What would move becomes a proposal, with the numbers.</summary>
    Proposals,

    /// <summary>It moves by itself within the club's limits, each time as an edition of its own that can be taken back.</summary>
    Automatic,
}

/// <summary>How a club goes about its rules, chosen by who may manage it.</summary>
/// <param name="ProposeRoles">Roles, as the platform names them, whose members may propose besides those who manage the club.</param>
/// <param name="PublishRoles">The same for publishing; who may publish may propose.</param>
/// <param name="TwoPeople">True when nobody may publish a proposal of their own.</param>
/// <param name="MostFactor">The most that learning may multiply or divide the odds of a cause by; 1 to 10.</param>
/// <param name="MemberShare">The most that one member's cases count for, as a share of all; in (0, 1].</param>
/// <param name="Off">Numbers of the rules that are never learnt, as <see cref="Learning.LearningTarget.Key"/>.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record TeachingSettings(
    ClubId Club,
    ImmutableSortedSet<string> ProposeRoles,
    ImmutableSortedSet<string> PublishRoles,
    bool TwoPeople,
    LearningMode Learning,
    double MostFactor,
    double MemberShare,
    ImmutableSortedSet<string> Off,
    int Version)
{
    // Roles are told apart letter by letter, never as a language would sort them.
    private static readonly ImmutableSortedSet<string> None = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    public static TeachingSettings New(ClubId club) => new(club, None, None, false, LearningMode.Proposals, 3, 0.05, None, 0);

    /// <param name="manages">Whether the platform lets them manage the club.</param>
    /// <param name="roles">The roles that came with the act itself.</param>
    public TeachingRights Of(bool manages, IEnumerable<string> roles)
    {
        if (manages) return TeachingRights.All;
        var has = roles as IReadOnlyCollection<string> ?? [.. roles];
        return has.Any(PublishRoles.Contains) ? TeachingRights.Propose | TeachingRights.Publish
            : has.Any(ProposeRoles.Contains) ? TeachingRights.Propose
            : TeachingRights.None;
    }
}
