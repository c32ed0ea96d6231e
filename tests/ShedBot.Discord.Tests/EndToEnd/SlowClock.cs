namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A clock that goes slower than the real one: a busy machine then looks like a quick one, and what is tested is the order of things, not the speed.</summary>
/// <param name="factor">So many real seconds for one of this clock; 1 or more.</param>
internal sealed class SlowClock(int factor) : TimeProvider
{
    private readonly DateTimeOffset begin = System.GetUtcNow();
    private readonly long first = System.GetTimestamp();

    public override long TimestampFrequency => System.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => begin + (System.GetUtcNow() - begin) / factor;

    public override long GetTimestamp() => first + (System.GetTimestamp() - first) / factor;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new SlowTimer(System.CreateTimer(callback, state, Slower(dueTime), Slower(period)), this);

    private TimeSpan Slower(TimeSpan time) => time > TimeSpan.Zero ? time * factor : time;

    private sealed class SlowTimer(ITimer timer, SlowClock clock) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => timer.Change(clock.Slower(dueTime), clock.Slower(period));

        public void Dispose() => timer.Dispose();

        public ValueTask DisposeAsync() => timer.DisposeAsync();
    }
}
