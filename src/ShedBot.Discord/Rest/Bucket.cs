namespace ShedBot.Discord.Rest;

/// <summary>One limit for one resource: its window, and the line of requests that wait for it. One request is under way at a time, so that order is kept and each answer's figures hold for the next.</summary>
/// <remarks>Not safe by itself: <see cref="Buckets"/> holds its lock around every call.</remarks>
internal sealed class Bucket
{
    private readonly LinkedList<TaskCompletionSource<Bucket>> line = new();

    public Window Window { get; } = new();

    /// <summary>The platform's name for it; none until the first answer has come.</summary>
    public string? Id { get; set; }

    public bool Busy { get; private set; }

    /// <summary>Nobody is served or waiting, and nothing is to be remembered.</summary>
    public bool IsIdle(TimeSpan now) => !Busy && line.Count == 0 && Window.Over(now);

    /// <returns>Done at once when nobody is before us. Its result is the bucket whose turn it is then: the line may have moved meanwhile.</returns>
    public TaskCompletionSource<Bucket> Join(bool first = false)
    {
        var place = new TaskCompletionSource<Bucket>(TaskCreationOptions.RunContinuationsAsynchronously);
        if (!Busy)
        {
            Busy = true;
            place.SetResult(this);
        }
        else if (first)
        {
            line.AddFirst(place);
        }
        else
        {
            line.AddLast(place);
        }

        return place;
    }

    /// <summary>Lets the next in line go on, passing over those that gave up.</summary>
    public void Leave()
    {
        Busy = false;
        while (!Busy && line.First is { } next)
        {
            line.RemoveFirst();
            Busy = next.Value.TrySetResult(this);
        }
    }

    /// <summary>Sends everybody who waits here to the end of another line.</summary>
    public void MoveLineTo(Bucket other)
    {
        foreach (var place in line)
            other.line.AddLast(place);
        line.Clear();
        if (!other.Busy)
            other.Leave();
    }
}
