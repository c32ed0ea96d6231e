namespace ShedBot.Discord.Clubs;

/// <summary>Does work so that one event that goes wrong does not take others with it.</summary>
internal sealed class Guard(Parts parts, CancellationToken stopping)
{
    public async Task RunAsync(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // Not dealt with to the end: it comes again when the session is resumed, and what was kept of it counts once.
        }
        catch (Exception e) when (stopping.IsCancellationRequested)
        {
            parts.Log.CutOff(e);
        }
        catch (Exception e)
        {
            parts.Log.Failed(e);
        }
    }
}
