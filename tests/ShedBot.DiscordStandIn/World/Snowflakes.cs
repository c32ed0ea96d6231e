namespace ShedBot.DiscordStandIn.World;

/// <summary>Makes ids the way the platform does: milliseconds since its epoch in the upper 42 bits. Ids only ever grow.</summary>
internal sealed class Snowflakes(TimeProvider clock)
{
    private const long EpochMilliseconds = 1420070400000;
    private ulong last;

    public ulong Next()
    {
        var fromClock = (ulong)(clock.GetUtcNow().ToUnixTimeMilliseconds() - EpochMilliseconds) << 22;
        last = Math.Max(fromClock, last + 1);
        return last;
    }

    /// <summary>When an id was made, by the clock it was made with.</summary>
    public static DateTimeOffset MadeAt(ulong id) => DateTimeOffset.FromUnixTimeMilliseconds((long)(id >> 22) + EpochMilliseconds);
}
