namespace ShedBot.DiscordStandIn.World;

/// <summary>Who may do what where. Order of resolution as the platform's permission page has it: the everyone role, the person's
/// roles, then the channel's overwrites for everyone, roles and person; owner and administrator bypass all.</summary>
internal static class RightsOf
{
    private const Rights Direct = Rights.ViewChannel | Rights.SendMessages | Rights.EmbedLinks | Rights.AttachFiles
        | Rights.ReadMessageHistory | Rights.AddReactions | Rights.UseApplicationCommands | Rights.PinMessages;

    public static Rights In(Guild guild, Person person)
    {
        if (guild.Owner == person)
            return Rights.All;
        if (!guild.Members.TryGetValue(person.Id, out var member))
            return Rights.None;
        var rights = guild.Roles[0].Rights;
        foreach (var id in member.RoleIds)
            rights |= guild.RoleOf(id)?.Rights ?? Rights.None;
        return rights.HasFlag(Rights.Administrator) ? Rights.All : rights;
    }

    public static Rights In(Channel channel, Person person)
    {
        if (channel.Guild is not { } guild)
            return channel.Recipient == person || person.IsBot ? Direct : Rights.None;
        var rights = In(guild, person);
        if (rights == Rights.All || rights == Rights.None)
            return rights;
        var place = channel.Parent is { Kind: not ChannelKind.Category } parent ? parent : channel;
        rights = Overwritten(rights, place, guild, guild.Members[person.Id]);
        if (!rights.HasFlag(Rights.ViewChannel))
            return Rights.None;
        if (channel.Kind == ChannelKind.PrivateThread && !rights.HasFlag(Rights.ManageThreads) && !channel.Thread!.Members.ContainsKey(person.Id))
            return Rights.None;
        // Without the right to talk, files, links and the like are void; in a thread it is the other right that counts.
        var talk = channel.Thread is null ? Rights.SendMessages : Rights.SendMessagesInThreads;
        return rights.HasFlag(talk) ? rights : rights & ~(Rights.EmbedLinks | Rights.AttachFiles | Rights.MentionEveryone);
    }

    private static Rights Overwritten(Rights rights, Channel place, Guild guild, Member member)
    {
        foreach (var o in place.Overwrites.Where(o => !o.IsPerson && o.TargetId == guild.Id))
            rights = (rights & ~o.Deny) | o.Allow;
        Rights deny = 0, allow = 0;
        foreach (var o in place.Overwrites.Where(o => !o.IsPerson && member.RoleIds.Contains(o.TargetId)))
            (deny, allow) = (deny | o.Deny, allow | o.Allow);
        rights = (rights & ~deny) | allow;
        foreach (var o in place.Overwrites.Where(o => o.IsPerson && o.TargetId == member.Person.Id))
            rights = (rights & ~o.Deny) | o.Allow;
        return rights;
    }
}
