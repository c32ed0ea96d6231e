using Microsoft.Extensions.Logging;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Gateway;

/// <summary>Lets shards begin sessions no faster than the platform allows: one of each lane in five seconds, and only so many in a day.</summary>
/// <remarks>Source: the platform's public description, "Gateway", session start limit and rate-limit key (shard number modulo max_concurrency).</remarks>
internal sealed class IdentifyGate(GatewayInfo first, Func<CancellationToken, Task<GatewayInfo>> ask, TimeProvider clock, ILogger log)
{
    private static readonly TimeSpan Apart = TimeSpan.FromSeconds(5), ShortestReset = Apart, AskAgain = TimeSpan.FromSeconds(60);

    private readonly Lane[] lanes = [.. Enumerable.Range(0, Math.Clamp(first.MaxConcurrency, 1, 1024)).Select(_ => new Lane())];
    private readonly Lock gate = new();
    private int remaining = first.Remaining;
    private TimeSpan resetAfter = first.ResetAfter;

    /// <summary>Waits for a place; no other shard of the lane gets one until it is used or disposed of.</summary>
    public async Task<Place> EnterAsync(int shard, CancellationToken ct)
    {
        var lane = lanes[shard % lanes.Length];
        await lane.Door.WaitAsync(ct).ConfigureAwait(false);
        try
        {
            while (!TryReserve())
                await RefillAsync(ct).ConfigureAwait(false);
            if (lane.Last is { } last && Apart - clock.GetElapsedTime(last) is { Ticks: > 0 } wait)
                await Task.Delay(wait, clock, ct).ConfigureAwait(false);
            return new Place(this, clock, lane);
        }
        catch
        {
            lane.Door.Release();
            throw;
        }
    }

    private bool TryReserve()
    {
        lock (gate)
        {
            if (remaining <= 0)
                return false;
            remaining--;
            return true;
        }
    }

    private async Task RefillAsync(CancellationToken ct)
    {
        var wait = resetAfter > ShortestReset ? resetAfter : ShortestReset;
        log.NoSessionsLeft(wait);
        await Task.Delay(wait, clock, ct).ConfigureAwait(false);
        try
        {
            var info = await ask(ct).ConfigureAwait(false);
            lock (gate)
                (remaining, resetAfter) = (info.Remaining, info.ResetAfter);
        }
        catch (DiscordException)
        {
            resetAfter = AskAgain;
        }
    }

    internal sealed class Lane
    {
        public SemaphoreSlim Door { get; } = new(1);

        public long? Last { get; set; }
    }

    private void GiveBack()
    {
        lock (gate)
            remaining++;
    }

    internal sealed class Place(IdentifyGate owner, TimeProvider clock, Lane lane) : IDisposable
    {
        private bool used;

        /// <summary>The session has been asked for: the next of the lane may have its turn in five seconds.</summary>
        public void Use()
        {
            used = true;
            lane.Last = clock.GetTimestamp();
            lane.Door.Release();
        }

        public void Dispose()
        {
            if (used)
                return;
            used = true;
            owner.GiveBack();
            lane.Door.Release();
        }
    }
}
