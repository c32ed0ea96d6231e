namespace ShedBot.Discord.Gateway;

/// <summary>Beats for one connection, on a timer that waits for no socket, and notices when nobody answers.</summary>
/// <param name="beat">Puts a beat in the queue; false: it may be left out.</param>
internal sealed class Heart(TimeProvider clock, Func<double> chance, Action<bool> beat)
{
    /// <summary>How long the other side may take to say hello. Our own choice.</summary>
    public static readonly TimeSpan HelloWithin = TimeSpan.FromSeconds(25);

    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private readonly TaskCompletionSource greeted = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private TimeSpan interval;
    private long beatAt;
    private volatile bool acknowledged = true;

    public bool Greeted => greeted.Task.IsCompleted;

    /// <returns>False when there is no beating at such an interval.</returns>
    public bool Hello(double? milliseconds)
    {
        if (milliseconds is not > 0 || milliseconds > Longest.TotalMilliseconds)
            return false;
        interval = TimeSpan.FromMilliseconds(milliseconds.Value);
        acknowledged = true; // What was not answered on the last connection is no fault of this one.
        greeted.TrySetResult();
        return true;
    }

    /// <summary>The other side wants a beat now.</summary>
    public void Answer() => beat(false);

    public void Acknowledge()
    {
        if (!acknowledged)
            GatewayMetrics.Latency.Record(clock.GetElapsedTime(Volatile.Read(ref beatAt)).TotalSeconds);
        acknowledged = true;
    }

    /// <returns>Why the link must be taken for dead.</returns>
    /// <exception cref="OperationCanceledException">The connection has ended.</exception>
    public async Task<string> RunAsync(CancellationToken ct)
    {
        try
        {
            await greeted.Task.WaitAsync(HelloWithin, clock, ct).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            return "no-hello";
        }
        // The first beat comes at a random moment, so that many bots do not beat in step.
        await Task.Delay(interval * chance(), clock, ct).ConfigureAwait(false);
        while (acknowledged)
        {
            acknowledged = false;
            Volatile.Write(ref beatAt, clock.GetTimestamp());
            beat(true);
            await Task.Delay(interval, clock, ct).ConfigureAwait(false);
        }
        return "no-acknowledgement";
    }
}
