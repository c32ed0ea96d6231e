using System.Collections.Concurrent;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>
/// A clock that goes slower than the real one: a busy machine then looks like a quick one, and what is tested is the order of things, not the speed. It can
/// also be put forward: what waits for a while waits on, and what comes round again and again comes round at once.
/// </summary>
/// <param name="factor">So many real seconds for one of this clock; 1 or more.</param>
internal sealed class SlowClock(int factor) : TimeProvider
{
    private readonly DateTimeOffset begin = System.GetUtcNow();
    private readonly long first = System.GetTimestamp();
    private readonly ConcurrentDictionary<SlowTimer, bool> rounds = new();
    private long moved;

    public override long TimestampFrequency => System.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => begin + (System.GetUtcNow() - begin) / factor + TimeSpan.FromTicks(Interlocked.Read(ref moved));

    public override long GetTimestamp() => first + (System.GetTimestamp() - first) / factor;

    /// <summary>Puts the clock forward, or back.</summary>
    public void Move(TimeSpan by)
    {
        Interlocked.Add(ref moved, by.Ticks);
        ComeRound();
    }

    /// <summary>What comes round again and again comes round now.</summary>
    public void ComeRound()
    {
        foreach (var timer in rounds.Keys) timer.Hurry();
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new SlowTimer(System.CreateTimer(callback, state, Slower(dueTime), Slower(period)), this, period);
        if (period > TimeSpan.Zero) rounds[timer] = true;
        return timer;
    }

    private TimeSpan Slower(TimeSpan time) => time > TimeSpan.Zero ? time * factor : time;

    private sealed class SlowTimer(ITimer timer, SlowClock clock, TimeSpan period) : ITimer
    {
        public void Hurry() => timer.Change(TimeSpan.Zero, clock.Slower(period));

        public bool Change(TimeSpan dueTime, TimeSpan period) => timer.Change(clock.Slower(dueTime), clock.Slower(period));

        public void Dispose()
        {
            clock.rounds.TryRemove(this, out _);
            timer.Dispose();
        }

        public ValueTask DisposeAsync()
        {
            clock.rounds.TryRemove(this, out _);
            return timer.DisposeAsync();
        }
    }
}
