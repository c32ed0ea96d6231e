using ShedBot.Discord.Running;
using ShedBot.Serving;

namespace ShedBot.Tests.Serving;

/// <summary>A chat that does as the test says.</summary>
internal sealed class PlayedChat : IChat
{
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Whether it was stopped, and if so whether as one that comes back.</summary>
    public bool? ComingBack { get; private set; }

    /// <summary>It does not end when it is stopped.</summary>
    public bool Stuck { get; init; }

    public ChatHealth Now { get; set; } = new(true, null, 0, false);

    public void Fail(Exception e) => ended.SetException(e);

    public void End() => ended.SetResult();

    public Task RunAsync(CancellationToken ct) => ended.Task.WaitAsync(ct);

    public async Task StopAsync(bool comingBack)
    {
        ComingBack = comingBack;
        if (Stuck) await Task.Delay(Timeout.InfiniteTimeSpan);
        ended.TrySetResult();
    }

    public ChatHealth Health() => Now;
}
