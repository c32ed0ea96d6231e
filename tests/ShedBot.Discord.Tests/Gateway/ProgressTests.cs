using CsCheck;
using ShedBot.Discord.Gateway;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>What may be told again is only what is not done: checked against the plainest reckoning, a list of all events with a tick for each. Source: resuming in the
/// platform's public description ("events after the sequence number are replayed"); the rule itself is our own.</summary>
public sealed class ProgressTests
{
    [Fact]
    public void Safe_EventsDoneInAnyOrder_IsOneBelowTheFirstThatIsNotDone() =>
        Gen.Select(Gen.Bool.Array[1, 30], Gen.Int[0, 1000].Array[0, 60]).Sample((wanted, order) =>
        {
            var progress = new Progress(100);
            var open = new SortedDictionary<long, Action>();
            for (var i = 0; i < wanted.Length; i++)
                if (wanted[i])
                    open[101 + i] = progress.Begin(101 + i);
                else
                    progress.Pass(101 + i);
            foreach (var pick in order)
            {
                Assert.Equal(open.Count == 0 ? 100 + wanted.Length : open.Keys.First() - 1, progress.Safe);
                if (open.Count == 0)
                    return;
                var (sequence, done) = open.ElementAt(pick % open.Count);
                done();
                if (pick % 3 == 0)
                    done(); // Said twice: it must not count for another.
                open.Remove(sequence);
            }
        });

    [Fact]
    public void Safe_AnEventToldTwice_WaitsForItsFirstTelling()
    {
        var progress = new Progress(0);
        var first = progress.Begin(1);
        progress.Begin(1)();
        Assert.Equal(0, progress.Safe);
        first();
        Assert.Equal(1, progress.Safe);
        Assert.Equal(1, progress.Last);
    }

    [Fact]
    public void Safe_DoneOnOtherThreads_LosesNothing()
    {
        var progress = new Progress(0);
        var dones = Enumerable.Range(1, 10_000).Select(s => progress.Begin(s)).ToArray();
        Parallel.ForEach(dones, (done, _, i) =>
        {
            done();
            if (i % 100 == 0)
                Assert.InRange(progress.Safe, 0, 10_000);
        });
        Assert.Equal(10_000, progress.Safe);
    }
}
