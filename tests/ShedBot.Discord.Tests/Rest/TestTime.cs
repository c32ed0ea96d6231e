using Microsoft.Extensions.Time.Testing;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>A clock that stands still until the test moves it, and that knows what is waited for.</summary>
internal sealed class TestTime() : FakeTimeProvider(new DateTimeOffset(2026, 5, 3, 12, 0, 0, TimeSpan.Zero))
{
    private readonly Lock gate = new();
    private readonly HashSet<Timer> waiting = [];

    private int made;

    /// <summary>How many timers there ever were.</summary>
    public int Made => Volatile.Read(ref made);

    /// <summary>The moment of the next timer; null when nothing waits.</summary>
    public DateTimeOffset? Next
    {
        get
        {
            lock (gate)
                return waiting.Count == 0 ? null : waiting.Min(t => t.Due);
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        Interlocked.Increment(ref made);
        var timer = new Timer(this, callback, state);
        timer.Inner = base.CreateTimer(timer.Fire, null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        timer.Change(dueTime, period);
        return timer;
    }

    private sealed class Timer(TestTime time, TimerCallback callback, object? state) : ITimer
    {
        public ITimer? Inner { get; set; }

        public DateTimeOffset Due { get; private set; }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            lock (time.gate)
            {
                time.waiting.Remove(this);
                if (dueTime != Timeout.InfiniteTimeSpan)
                {
                    Due = time.GetUtcNow() + dueTime;
                    time.waiting.Add(this);
                }
            }

            return Inner!.Change(dueTime, period);
        }

        public void Fire(object? ignored)
        {
            lock (time.gate)
                time.waiting.Remove(this);
            callback(state);
        }

        public void Dispose()
        {
            lock (time.gate)
                time.waiting.Remove(this);
            Inner!.Dispose();
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
