using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What a club calls somebody. For showing only: names change and are not kept.</summary>
internal static class People
{
    public static string? NameOf(GuildMember? member, User? user) => new[] { member?.Nick, user?.GlobalName, user?.Username }
        .FirstOrDefault(n => !string.IsNullOrWhiteSpace(n));
}
