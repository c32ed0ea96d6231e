using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Documents;

/// <summary>Keys of what belongs to one club. Each begins with the club, which holds no line feed, and a line feed: no key of one club is ever met under another's.</summary>
internal static class ClubKeys
{
    private const char AfterGap = '\v';

    /// <exception cref="ArgumentException">The club or the id is no key.</exception>
    public static string Of(ClubId club, string id, string what) => Keys.Join(ClubDocument.Checked(club), Keys.Checked(id, what));

    /// <exception cref="ArgumentException">The club is no key.</exception>
    public static string Of(ClubId club, long number) => Keys.Join(ClubDocument.Checked(club), Keys.Number(number));

    /// <summary>What is in a state, by time; two of the same time by id.</summary>
    public static string Of(ClubId club, Enum state, DateTimeOffset time, string id) => Keys.Join(StateOf(club, state), Times.Key(time) + id);

    public static string StateOf(ClubId club, Enum state) => Keys.Join(ClubDocument.Checked(club), state.ToString());

    /// <summary>The least key of a club.</summary>
    public static string First(ClubId club) => Keys.First(ClubDocument.Checked(club));

    /// <summary>Above every key of a club.</summary>
    public static string Above(ClubId club) => ClubDocument.Checked(club) + AfterGap;

    /// <exception cref="ArgumentException">The member is not one of those whom the club's rules serve: forgetting the club, or them, would not find it.</exception>
    public static string Checked(MemberId member, ClubId club) => member != default && ClubId.Serving(member) == club
        ? Keys.Checked(member.Value, "member id")
        : throw new ArgumentException($"'{member}' is no member of the club '{club}'.", nameof(member));
}
