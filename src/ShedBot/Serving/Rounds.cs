using Microsoft.Extensions.Logging;

namespace ShedBot.Serving;

/// <summary>Something that is done again and again; a time that goes wrong is logged and does not end it.</summary>
internal static class Rounds
{
    /// <summary>Once at the beginning, then each time <paramref name="period"/> has gone by, until called off.</summary>
    public static async Task KeepAsync(string what, TimeSpan period, Func<CancellationToken, Task> round, TimeProvider clock, ILogger log, CancellationToken ct)
    {
        using var timer = new PeriodicTimer(period, clock);
        do
        {
            try
            {
                await round(ct);
            }
            catch (Exception e) when (!ct.IsCancellationRequested)
            {
                log.RoundFailed(what, e);
            }
        }
        while (await timer.WaitForNextTickAsync(ct));
    }
}
