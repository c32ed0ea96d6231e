using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>What the operator may decide about the gateway.</summary>
internal sealed record GatewayOptions(BotToken Token)
{
    /// <summary>Characters of an activity's text. From memory: the platform's pages give no figure.</summary>
    public const int MaxPresence = 128;

    public Intents Intents { get; init; } = Intents.Ours;

    /// <summary>How many shards; null takes the number the platform advises. A club bot needs one up to 2,500 clubs.</summary>
    public int? Shards { get; init; }

    /// <summary>One compressed stream for each connection. Less to carry, more to compute.</summary>
    public bool Compress { get; init; }

    /// <summary>A short line under the bot's name, at most <see cref="MaxPresence"/> characters; null for none.</summary>
    public string? Presence { get; init; }

    /// <summary>Where to connect instead of where the platform says; null in ordinary use.</summary>
    public Uri? Url { get; init; }

    /// <exception cref="ArgumentOutOfRangeException">A value the platform would not take.</exception>
    public GatewayOptions Checked()
    {
        if (Shards is < 1)
            throw new ArgumentOutOfRangeException(nameof(Shards), Shards, "There must be at least one shard.");
        if (Presence is { Length: > MaxPresence })
            throw new ArgumentOutOfRangeException(nameof(Presence), Presence.Length, $"The line under the bot's name may have {MaxPresence} characters.");
        return this;
    }
}
