using Microsoft.Extensions.Logging;
using ShedBot.Discord.Running;

namespace ShedBot.Serving;

/// <summary>The chat, and what watches over it, from the start to the end.</summary>
/// <param name="errors">What the operator has to do before the next start is written here plainly, besides being logged.</param>
internal sealed class Service(IChat chat, Watch watch, TextWriter errors, TimeProvider clock, ILogger log)
{
    /// <summary>Shorter than the ten seconds that supervisors usually give.</summary>
    public static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(8);

    /// <summary>Until the chat ends, the store stops, or somebody asks it to stop.</summary>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public async Task<int> RunAsync(CancellationToken stop)
    {
        using var ending = new CancellationTokenSource();
        var watching = watch.RunAsync(ending.Token);
        var storeStops = watch.StoreStoppedAsync(ending.Token);
        var asked = Task.Delay(Timeout.InfiniteTimeSpan, stop);
        // Not called off by the stop: first what came in is dealt with.
        var chatting = chat.RunAsync(ending.Token);
        try
        {
            var first = await Task.WhenAny(chatting, storeStops, asked);
            if (first == chatting) return await EndedAsync(chatting);
            if (first == storeStops)
            {
                var why = await storeStops;
                log.StoreStopped(why);
                await StopAsync(chatting);
                return ExitCodes.StoreStopped;
            }

            log.Stopping();
            await StopAsync(chatting);
            log.Stopped();
            return ExitCodes.Fine;
        }
        finally
        {
            await ending.CancelAsync();
            await watching.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await ((Task)storeStops).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task<int> EndedAsync(Task chatting)
    {
        try
        {
            await chatting;
            log.ChatEnded(null);
            return ExitCodes.Broke;
        }
        catch (ChatRefusedException e)
        {
            log.Refused(e.Message);
            await errors.WriteLineAsync(e.Message);
            return ExitCodes.ChatRefused;
        }
        catch (Exception e)
        {
            log.ChatEnded(e);
            return ExitCodes.Broke;
        }
    }

    private async Task StopAsync(Task chatting)
    {
        var stopped = Task.WhenAll(chat.StopAsync(comingBack: true), chatting);
        if (await Task.WhenAny(stopped, Task.Delay(StopWithin, clock)) != stopped) log.LeftBehind(StopWithin.TotalSeconds);
        else await stopped.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }
}
