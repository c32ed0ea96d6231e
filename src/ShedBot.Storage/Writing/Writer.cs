using System.Threading.Channels;
using LiteDB;

namespace ShedBot.Storage.Writing;

/// <summary>
/// The one thread that writes. Each job is a transaction; those that wait together share one flush to the disk, and none is told that it
/// is done before that flush.
/// </summary>
internal sealed class Writer
{
    private const int MostInQueue = 1024;
    private const int MostInBatch = 64;

    private readonly Channel<WriteJob> queue = Channel.CreateBounded<WriteJob>(new BoundedChannelOptions(MostInQueue) { SingleReader = true });
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly LiteDatabase db;
    private readonly LogFile log;
    private readonly StoreOptions options;
    private long putAwayAbove;
    private volatile StoreStoppedException? stopped;

    public Writer(LiteDatabase db, LogFile log, StoreOptions options)
    {
        (this.db, this.log, this.options) = (db, log, options);
        putAwayAbove = options.CheckpointBytes;
        new Thread(Run) { IsBackground = true, Name = "store writer" }.Start();
    }

    /// <summary>Why nothing is written any more, or null.</summary>
    public StoreStoppedException? Stopped => stopped;

    /// <param name="ct">Counts until the work begins; work that has begun is brought to its end.</param>
    public async Task DoAsync(Action<LiteDatabase> work, bool alone, CancellationToken ct)
    {
        var job = new WriteJob(work, alone, ct);
        try
        {
            await queue.Writer.WriteAsync(job, ct);
        }
        catch (ChannelClosedException)
        {
            throw new ObjectDisposedException(nameof(LiteShedStore));
        }

        await job.Done;
    }

    /// <summary>As <see cref="DoAsync"/>, and the log is put away right after, whatever its length: until then it holds what was removed.</summary>
    public Task RemoveAsync(Action<LiteDatabase> work, CancellationToken ct) => DoAsync(
        d =>
        {
            work(d);
            putAwayAbove = 0;
        },
        alone: false, ct);

    /// <summary>Takes no more work, does what is queued, and puts the log away.</summary>
    public Task EndAsync()
    {
        queue.Writer.TryComplete();
        return ended.Task;
    }

    private void Run()
    {
        var batch = new List<WriteJob>(MostInBatch);
        while (queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            while (batch.Count < MostInBatch && queue.Reader.TryRead(out var job))
            {
                Do(job);
                batch.Add(job);
            }

            Finish(batch);
            batch.Clear();
        }

        PutAway();
        ended.SetResult();
    }

    private void Do(WriteJob job)
    {
        try
        {
            if (stopped is { } e)
            {
                throw e;
            }

            if (job.IsAlone)
            {
                log.PutAway(db);
                job.Do(db);
            }
            else
            {
                InTransaction(job);
            }
        }
        catch (Exception e)
        {
            job.Failure = e;
        }
    }

    private void InTransaction(WriteJob job)
    {
        db.BeginTrans();
        try
        {
            job.Do(db);
        }
        catch (Exception e)
        {
            Try(() => db.Rollback());
            if (e is IOException)
            {
                Stop(e);
            }

            throw;
        }

        // A commit that fails leaves open what is in the file; only opening it anew can tell.
        Try(() => _ = db.Commit() ? true : throw new IOException("A save could not be committed."));
        if (stopped is { } stop)
        {
            throw stop;
        }
    }

    private void Finish(List<WriteJob> batch)
    {
        if (options.Durable && stopped is null)
        {
            // After a failed flush the system may hold the lost pages for written, so a second try would prove nothing.
            Try(log.Flush);
            if (stopped is { } stop)
            {
                batch.ForEach(j => j.Failure ??= stop);
            }
        }

        batch.ForEach(j => j.Tell());
        Try(() =>
        {
            if (log.Length > putAwayAbove)
            {
                PutAway();
            }
        });
    }

    // It fails while a reader is inside for too long. That costs nothing but disk, so it is tried again when the log has grown on.
    private void PutAway()
    {
        if (stopped is not null)
        {
            return;
        }

        try
        {
            log.PutAway(db);
            putAwayAbove = options.CheckpointBytes;
        }
        catch (LiteException)
        {
            putAwayAbove = log.Length + options.CheckpointBytes;
        }
        catch (Exception e)
        {
            Stop(e);
        }
    }

    private void Try(Action action)
    {
        try
        {
            action();
        }
        catch (Exception e)
        {
            Stop(e);
        }
    }

    private void Stop(Exception cause) => stopped ??= new StoreStoppedException(cause);
}
