using LiteDB;

namespace ShedBot.Storage.Writing;

/// <summary>Something to be done by the writer. Synchronous: a transaction belongs to its thread, so nothing may be awaited inside.</summary>
/// <param name="alone">True: outside a transaction, with everything put away into the data file.</param>
internal sealed class WriteJob(Action<LiteDatabase> work, bool alone, CancellationToken ct)
{
    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public bool IsAlone => alone;

    /// <summary>Why it failed, or null.</summary>
    public Exception? Failure { get; set; }

    /// <summary>Completes once the work is as safe as was asked for.</summary>
    public Task Done => done.Task;

    public void Do(LiteDatabase db)
    {
        ct.ThrowIfCancellationRequested();
        work(db);
    }

    public void Tell()
    {
        switch (Failure)
        {
            case null:
                done.SetResult();
                break;
            case OperationCanceledException e:
                done.SetCanceled(e.CancellationToken);
                break;
            default:
                done.SetException(Failure);
                break;
        }
    }
}
