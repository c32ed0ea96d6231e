using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What somebody may do with the rules of the club they act in: worked out anew for each act, from the rights and roles that came with that very act.</summary>
internal sealed class TeachingDoor(ITeachingStore store)
{
    /// <returns>Null outside of a club, where nobody has rights and there is nothing to look after.</returns>
    public async Task<Teacher?> TeacherAsync(Interaction used, CancellationToken ct)
    {
        if (used.GuildId.IsNone || used.Member is not { } member || used.Who is not { } who) return null;
        var club = Names.Club(used.GuildId);
        var settings = await store.TeachingSettingsAsync(club, ct);
        var rights = settings.Of(SetUp.IsModerator(used), (member.Roles ?? []).Select(r => r.ToString()));
        return new Teacher(club, club.Member(who.Id.ToString()), People.NameOf(member, who) ?? "a member", rights);
    }
}
