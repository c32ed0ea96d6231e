namespace ShedBot.Discord.Gateway;

/// <summary>Knows up to which event of a session everything has been dealt with, although events are finished in any order and on any thread.</summary>
internal sealed class Progress(long last)
{
    private readonly Lock gate = new();
    private readonly Queue<Open> open = new();
    private long last = last;

    /// <summary>The last sequence number that came in.</summary>
    public long Last => Volatile.Read(ref last);

    /// <summary>The sequence number up to which all is done: from here the platform should tell again after a restart.</summary>
    public long Safe
    {
        get
        {
            lock (gate)
            {
                while (open.TryPeek(out var head) && head.Done)
                    open.Dequeue();
                return open.TryPeek(out var first) ? first.Sequence - 1 : Last;
            }
        }
    }

    /// <summary>An event came in that needs nothing more.</summary>
    public void Pass(long sequence)
    {
        if (sequence > Last)
            Volatile.Write(ref last, sequence);
    }

    /// <summary>An event came in that is done only when the returned action has been called, which may be more than once.</summary>
    public Action Begin(long sequence)
    {
        // Told again: what was begun at its first telling still counts.
        if (sequence <= Last)
            return static () => { };
        var entry = new Open(sequence);
        lock (gate)
        {
            open.Enqueue(entry);
            Volatile.Write(ref last, sequence);
        }
        return entry.Finish;
    }

    private sealed class Open(long sequence)
    {
        private volatile bool done;

        public long Sequence => sequence;

        public bool Done => done;

        public void Finish() => done = true;
    }
}
