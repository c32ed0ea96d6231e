namespace ShedBot.Discord.Rest;

/// <summary>Time that only ever goes forward, since this was made; not that of the wall, which may be set.</summary>
internal sealed class Ticker(TimeProvider time)
{
    private readonly long began = time.GetTimestamp();

    public TimeSpan Now => time.GetElapsedTime(began);

    /// <summary>A wait is never cut short by a timer that counts whole milliseconds.</summary>
    public Task WaitAsync(TimeSpan wait, CancellationToken ct) =>
        wait <= TimeSpan.Zero ? Task.CompletedTask : Task.Delay(TimeSpan.FromMilliseconds(Math.Ceiling(wait.TotalMilliseconds)), time, ct);
}
