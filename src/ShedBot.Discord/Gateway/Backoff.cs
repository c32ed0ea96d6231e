namespace ShedBot.Discord.Gateway;

/// <summary>How long to wait before the next try: 1, 2, 4 ... 60 seconds and up to half as much again, so that many bots do not come back in step.</summary>
internal static class Backoff
{
    private const int LongestSeconds = 60, LargestShift = 6;

    /// <summary>A connection that stood this long was healthy: what went wrong before is forgotten.</summary>
    public static readonly TimeSpan Health = TimeSpan.FromSeconds(60);

    /// <param name="failures">Ended connections since the last healthy one, this one not counted; 0 or more.</param>
    /// <param name="chance">0 up to 1.</param>
    public static TimeSpan Wait(int failures, double chance) =>
        TimeSpan.FromSeconds(Math.Min(LongestSeconds, 1 << Math.Min(failures, LargestShift)) * (1 + (chance / 2)));
}
