namespace ShedBot.DiscordStandIn.World;

/// <summary>One server (club) of the platform.</summary>
public sealed class Guild
{
    internal Guild(ulong id, string name, Person owner)
    {
        Id = id;
        Name = name;
        Owner = owner;
    }

    public ulong Id { get; }

    public string Name { get; }

    public Person Owner { get; }

    public string PreferredLocale { get; set; } = "en-GB";

    /// <summary>False once the bot was removed.</summary>
    public bool BotIsIn { get; internal set; } = true;

    /// <summary>True during an outage.</summary>
    public bool Unavailable { get; internal set; }

    /// <summary>The first is the everyone role, whose id is the guild's.</summary>
    internal List<Role> Roles { get; } = [];

    internal List<Channel> Channels { get; } = [];

    internal Dictionary<ulong, Member> Members { get; } = [];

    internal Role? RoleOf(ulong id) => Roles.Find(r => r.Id == id);
}

/// <summary>A role of a guild.</summary>
public sealed class Role
{
    internal Role(ulong id, string name, Rights rights)
    {
        Id = id;
        Name = name;
        Rights = rights;
    }

    public ulong Id { get; }

    public string Name { get; }

    public Rights Rights { get; set; }

    /// <summary>Whether anybody may ping the role.</summary>
    public bool Mentionable { get; set; }
}

/// <summary>A person in a guild.</summary>
public sealed class Member
{
    internal Member(Person person, DateTimeOffset joinedAt)
    {
        Person = person;
        JoinedAt = joinedAt;
    }

    public Person Person { get; }

    public DateTimeOffset JoinedAt { get; }

    public string? Nick { get; set; }

    internal List<ulong> RoleIds { get; } = [];
}
