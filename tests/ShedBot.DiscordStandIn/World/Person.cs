namespace ShedBot.DiscordStandIn.World;

/// <summary>How a person takes direct messages from the bot.</summary>
public enum DirectMessages
{
    /// <summary>They arrive.</summary>
    Welcome,

    /// <summary>The person has blocked the bot: opening works, sending is refused with 50007.</summary>
    Blocked,

    /// <summary>No shared server, or the server's members refuse them: opening works, sending is refused with 50278.</summary>
    NoSharedServer,

    /// <summary>Even opening the channel is refused, with 400 and 50007.</summary>
    NotEvenOpened,
}

/// <summary>One account of the platform.</summary>
public sealed class Person
{
    internal Person(ulong id, string name, bool isBot = false)
    {
        Id = id;
        Name = name;
        IsBot = isBot;
    }

    public ulong Id { get; }

    public string Name { get; }

    public bool IsBot { get; }

    /// <summary>Name shown instead of <see cref="Name"/>; null when the person set none.</summary>
    public string? ShownName { get; set; }

    /// <summary>The language of the person's app, as interactions carry it.</summary>
    public string Locale { get; set; } = "en-GB";

    public DirectMessages DirectMessages { get; set; }
}
