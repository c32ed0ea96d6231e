using Microsoft.Extensions.Time.Testing;

namespace ShedBot.Discord.Tests.Gateway.Rig;

/// <summary>A clock that stands until it is told to go on, and knows which waits have begun: so a test moves time only when somebody waits for it.</summary>
internal sealed class SteppedClock() : FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero))
{
    private readonly Lock gate = new();
    private readonly List<TimeSpan> asked = [];

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = base.CreateTimer(callback, state, dueTime, period);
        lock (gate)
            asked.Add(dueTime);
        return timer;
    }

    /// <summary>Waits until somebody waits for this long.</summary>
    public Task AskedAsync(double seconds)
    {
        var due = TimeSpan.FromSeconds(seconds);
        return Wait.UntilAsync(
            () =>
            {
                lock (gate)
                    return asked.Contains(due);
            },
            $"nobody waits for {due}");
    }

    /// <summary>Waits until somebody waits for this long, and lets it pass.</summary>
    public async Task PassAsync(double seconds)
    {
        var due = TimeSpan.FromSeconds(seconds);
        await AskedAsync(seconds);
        lock (gate)
            asked.Remove(due);
        Advance(due);
    }
}

internal static class Wait
{
    /// <summary>A guard against hanging, not a measure of speed.</summary>
    public static readonly TimeSpan Guard = TimeSpan.FromSeconds(60);

    public static async Task UntilAsync(Func<bool> so, string otherwise)
    {
        var started = TimeProvider.System.GetTimestamp();
        while (!so())
        {
            if (TimeProvider.System.GetElapsedTime(started) > Guard)
                throw new TimeoutException(otherwise);
            await Task.Delay(1);
        }
    }
}
