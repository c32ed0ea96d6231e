using ShedBot.Discord.Clubs;

namespace ShedBot.Discord.Tests.Clubs;

public sealed class LanesTests
{
    [Fact]
    public async Task Post_OneLane_KeepsTheOrder()
    {
        var lanes = new Lanes();
        var seen = new List<int>();
        for (var i = 0; i < 200; i++)
        {
            var mine = i;
            lanes.Post(7, async () =>
            {
                await Task.Yield();
                seen.Add(mine);
            });
        }

        await lanes.DrainAsync();
        Assert.Equal(Enumerable.Range(0, 200), seen);
    }

    [Fact]
    public async Task Post_AnotherLane_DoesNotWait()
    {
        var lanes = new Lanes();
        var (hold, other) = (new TaskCompletionSource(), new TaskCompletionSource());
        lanes.Post(1, () => hold.Task);
        lanes.Post(2, () =>
        {
            other.SetResult();
            return Task.CompletedTask;
        });
        await other.Task;
        Assert.False(hold.Task.IsCompleted);
        hold.SetResult();
        await lanes.DrainAsync();
    }

    [Fact]
    public async Task Post_AfterAFailure_GoesOn()
    {
        var lanes = new Lanes();
        var after = new TaskCompletionSource();
        lanes.Post(1, () => throw new InvalidOperationException("on purpose"));
        lanes.Post(1, () =>
        {
            after.SetResult();
            return Task.CompletedTask;
        });
        await after.Task;
    }

    [Fact]
    public async Task Busy_AllDone_ForgetsTheLanes()
    {
        var lanes = new Lanes();
        for (var i = 0UL; i < 100; i++) lanes.Post(i, () => Task.CompletedTask);
        await lanes.DrainAsync();
        while (lanes.Busy > 0) await Task.Yield();
    }
}
