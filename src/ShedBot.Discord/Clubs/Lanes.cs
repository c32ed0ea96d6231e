namespace ShedBot.Discord.Clubs;

/// <summary>Work of one lane is done one piece after the other, in the order in which it came; lanes run side by side.</summary>
internal sealed class Lanes
{
    private readonly Lock gate = new();
    private readonly Dictionary<ulong, Task> last = [];

    /// <summary>Lanes with work in them.</summary>
    public int Busy
    {
        get
        {
            lock (gate) return last.Count;
        }
    }

    /// <param name="work">Must not throw: what goes wrong is its own to tell.</param>
    public void Post(ulong lane, Func<Task> work)
    {
        lock (gate)
        {
            var before = last.GetValueOrDefault(lane, Task.CompletedTask);
            var mine = RunAsync(before, work);
            last[lane] = mine;
            // Clean up when nothing came after; runs later or at once, on whatever thread ends the work.
            mine.ContinueWith(done => Leave(lane, done), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        }
    }

    /// <summary>Waits until all that was posted so far is done.</summary>
    public Task DrainAsync()
    {
        lock (gate) return Task.WhenAll(last.Values);
    }

    private static async Task RunAsync(Task before, Func<Task> work)
    {
        await Task.WhenAny(before).ConfigureAwait(ConfigureAwaitOptions.ForceYielding);
        await work();
    }

    private void Leave(ulong lane, Task done)
    {
        lock (gate)
        {
            if (last.GetValueOrDefault(lane) == done) last.Remove(lane);
        }
    }
}
