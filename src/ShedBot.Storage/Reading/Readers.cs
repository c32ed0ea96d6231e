using LiteDB;

namespace ShedBot.Storage.Reading;

/// <summary>Lets a bounded number of readers in: each holds one of LiteDB's hundred transactions until its list is read to the end.</summary>
internal sealed class Readers(LiteDatabase db) : IDisposable
{
    private const int MostAtOnce = 16;

    private readonly SemaphoreSlim gate = new(MostAtOnce);
    private volatile bool closed;

    /// <param name="read">Must return what it read, never something that reads on later.</param>
    public async Task<T> ReadAsync<T>(Func<LiteDatabase, T> read, CancellationToken ct)
    {
        ObjectDisposedException.ThrowIf(closed, typeof(LiteShedStore));
        await gate.WaitAsync(ct);
        try
        {
            ObjectDisposedException.ThrowIf(closed, typeof(LiteShedStore));
            return read(db);
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>Lets nobody in any more and returns when the last one is out.</summary>
    public async Task CloseAsync()
    {
        closed = true;
        for (var i = 0; i < MostAtOnce; i++)
        {
            await gate.WaitAsync();
        }

        gate.Release(MostAtOnce);
    }

    public void Dispose() => gate.Dispose();
}
