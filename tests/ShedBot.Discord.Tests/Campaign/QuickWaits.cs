namespace ShedBot.Discord.Tests.Campaign;

/// <summary>A clock whose waits are so many times as short; the time of day is the true one. For pauses that are minutes long after many lost connections.</summary>
internal sealed class QuickWaits(double times) : TimeProvider
{
    public override long GetTimestamp() => (long)(System.GetTimestamp() * times);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new Quick(this, System.CreateTimer(callback, state, Shorter(dueTime), Shorter(period)));

    private TimeSpan Shorter(TimeSpan wait) => wait <= TimeSpan.Zero ? wait : wait / times;

    private sealed class Quick(QuickWaits clock, ITimer timer) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => timer.Change(clock.Shorter(dueTime), clock.Shorter(period));

        public void Dispose() => timer.Dispose();

        public ValueTask DisposeAsync() => timer.DisposeAsync();
    }
}
