using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What ShedBot must be allowed to do in a help channel, and what of it is missing.</summary>
/// <remarks>Order of resolution: the platform's published description, topics "Permissions".</remarks>
internal sealed class RightsCheck(Parts parts)
{
    private const int RoleOverwrite = 0;

    /// <summary>Without one of these a case cannot be coached; names are the platform's own.</summary>
    private static readonly ImmutableArray<(Rights Right, string Name)> Needed =
    [
        (Rights.ViewChannel, "View Channel"),
        (Rights.SendMessages, "Send Messages (in a forum: Create Posts)"),
        (Rights.SendMessagesInThreads, "Send Messages in Threads"),
        (Rights.CreatePublicThreads, "Create Public Threads"),
        (Rights.CreatePrivateThreads, "Create Private Threads"),
        (Rights.AttachFiles, "Attach Files"),
        (Rights.EmbedLinks, "Embed Links"),
        (Rights.ReadMessageHistory, "Read Message History"),
    ];

    /// <summary>All of them as one number, for the link by which a club takes ShedBot in.</summary>
    public static ulong All => Needed.Aggregate(0UL, (sum, n) => sum | (ulong)n.Right);

    public async Task<ImmutableArray<string>> MissingAsync(ClubId club, string helpChannel, CancellationToken ct)
    {
        try
        {
            var guild = Names.Guild(club);
            var roles = await parts.Rest.ListRolesAsync(guild, ct);
            var me = await parts.Rest.GetMemberAsync(guild, parts.Me.User, ct);
            var channel = await parts.Rest.GetChannelAsync(Snowflake.Read(helpChannel) ?? default, ct);
            return Missing(Resolve(guild, parts.Me.User, me.Roles ?? [], roles, channel.PermissionOverwrites ?? []), ChannelTypes.IsForum(channel.Type));
        }
        catch (DiscordException e) when (e.Trouble is Trouble.Forbidden or Trouble.Gone)
        {
            return [Needed[0].Name];
        }
    }

    /// <param name="forum">A forum has no private threads.</param>
    public static ImmutableArray<string> Missing(Rights have, bool forum) =>
        [.. Needed.Where(n => !(forum && n.Right is Rights.CreatePrivateThreads or Rights.CreatePublicThreads) && (have & n.Right) == 0).Select(n => n.Name)];

    public static Rights Resolve(
        Snowflake guild, Snowflake member, IReadOnlyList<Snowflake> memberRoles, IReadOnlyList<Role> roles, IReadOnlyList<Overwrite> overwrites)
    {
        var mine = roles.Where(r => r.Id == guild || memberRoles.Contains(r.Id)).Aggregate(Rights.None, (sum, r) => sum | Read(r.Permissions));
        if ((mine & Rights.Administrator) != 0) return (Rights)ulong.MaxValue;
        mine = Apply(mine, overwrites.Where(o => o.Type == RoleOverwrite && o.Id == guild));
        mine = Apply(mine, overwrites.Where(o => o.Type == RoleOverwrite && o.Id != guild && memberRoles.Contains(o.Id)));
        mine = Apply(mine, overwrites.Where(o => o.Type != RoleOverwrite && o.Id == member));
        return (mine & Rights.ViewChannel) == 0 ? Rights.None : mine;
    }

    public static Rights Read(string? bits) =>
        ulong.TryParse(bits, NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? (Rights)value : Rights.None;

    private static Rights Apply(Rights have, IEnumerable<Overwrite> overwrites)
    {
        var (allow, deny) = overwrites.Aggregate((Rights.None, Rights.None), (sum, o) => (sum.Item1 | Read(o.Allow), sum.Item2 | Read(o.Deny)));
        return (have & ~deny) | allow;
    }
}
