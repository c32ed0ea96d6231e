namespace ShedBot.Discord.Rest;

/// <summary>The limit over all routes that carry the bot's token: so many in any second, and nothing at all while the platform says so.</summary>
/// <remarks>Source: the platform's description, topics/rate-limits: 50 a second; routes of an interaction are not counted.</remarks>
internal sealed class GlobalGate(Ticker ticker, int perSecond)
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    private readonly Lock gate = new();
    private readonly Queue<TimeSpan> sent = new(perSecond);
    private TimeSpan pausedTill;
    private TaskCompletionSource? probe;
    private bool mustProbe;

    /// <summary>Waits until one more may go.</summary>
    /// <param name="fits">Throws when a wait would be too long.</param>
    public async Task<Pass> EnterAsync(Action<TimeSpan> fits, CancellationToken ct)
    {
        while (true)
        {
            Task? others = null;
            TimeSpan wait;
            lock (gate)
            {
                wait = TimeTillFree();
                if (wait <= TimeSpan.Zero)
                {
                    others = mustProbe ? probe?.Task : null;
                    if (others is null)
                        return Let();
                }
            }

            if (others is not null)
            {
                await others.WaitAsync(ct);
                continue;
            }

            fits(wait);
            await ticker.WaitAsync(wait, ct);
        }
    }

    /// <summary>A 429 for everything: nobody goes before this has passed, and then one first, to see.</summary>
    public void Pause(TimeSpan wait)
    {
        lock (gate)
        {
            var till = ticker.Now + wait;
            pausedTill = till > pausedTill ? till : pausedTill;
            mustProbe = true;
        }
    }

    private TimeSpan TimeTillFree()
    {
        var now = ticker.Now;
        while (sent.TryPeek(out var oldest) && oldest + Second <= now)
            sent.Dequeue();
        if (pausedTill > now)
            return pausedTill - now;
        return sent.Count < perSecond ? TimeSpan.Zero : sent.Peek() + Second - now;
    }

    private Pass Let()
    {
        sent.Enqueue(ticker.Now);
        if (!mustProbe)
            return new Pass(null);
        probe = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        return new Pass(this);
    }

    private void Back(bool answered)
    {
        lock (gate)
        {
            // A probe that got no answer has shown nothing: the next in line is one too.
            if (answered && pausedTill <= ticker.Now)
                mustProbe = false;
            probe?.SetResult();
            probe = null;
        }
    }

    /// <summary>The leave for one request; kept until its answer has been looked at.</summary>
    internal sealed class Pass(GlobalGate? probed) : IDisposable
    {
        public bool Answered { get; set; }

        public void Dispose() => probed?.Back(Answered);
    }
}
