using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Clubs;

/// <summary>One club, as the platform knows it. <c>default</c> is none.</summary>
public readonly record struct ClubId(string Value)
{
    /// <summary>Between club and member in a <see cref="MemberId"/>: what is kept of one club is found by it, and never mixes with another's.</summary>
    public const char Between = '/';

    /// <summary>Where whoever belongs to no club teaches and is coached: the practice terminal.</summary>
    public static ClubId Practice { get; } = new("practice");

    /// <summary>Somebody as a member of this club: the same person is another member in another club.</summary>
    /// <param name="person">The platform's id of the person.</param>
    public MemberId Member(string person) => new(Value + Between + person);

    /// <returns>The club of a member, or null for one who belongs to none, as in the practice terminal.</returns>
    public static ClubId? Of(MemberId member)
    {
        var at = member.Value?.IndexOf(Between, StringComparison.Ordinal) ?? -1;
        return at > 0 ? new ClubId(member.Value![..at]) : null;
    }

    /// <returns>The club whose rules serve a member.</returns>
    public static ClubId Serving(MemberId member) => Of(member) ?? Practice;

    public override string ToString() => Value;
}

/// <summary>The units that a club thinks in. Stored by name: never rename a member.</summary>
public enum Units
{
    Metric,
    Imperial,
}

/// <summary>A club's own settings, chosen by its moderators.</summary>
/// <param name="HelpChannel">Where help is asked for, as the platform names it; null until a moderator has chosen it.</param>
/// <param name="HelperRole">The role that is called when a case is handed over, or null: then nobody is called.</param>
/// <param name="TimeZone">An IANA zone, such as Europe/Lisbon.</param>
/// <param name="LastHeard">The newest message of the help channel that was dealt with, for catching up after a pause; null when none was.</param>
/// <param name="LeftAt">When the club sent ShedBot away, or null: what is kept of it is removed some time after.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record Club(
    ClubId Id, string? HelpChannel, string? HelperRole, Units Units, string TimeZone, string? LastHeard, DateTimeOffset? LeftAt, int Version)
{
    public static Club New(ClubId id) => new(id, null, null, Units.Metric, "Etc/UTC", null, null, 0);
}
