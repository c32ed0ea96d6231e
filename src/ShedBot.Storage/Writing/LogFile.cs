using LiteDB;
using Microsoft.Win32.SafeHandles;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Writing;

/// <summary>
/// The log of an open store, through a handle of our own: LiteDB 5.0.21 never flushes it to the disk, and a flush through any handle
/// covers what was written through every other.
/// </summary>
internal sealed class LogFile : IDisposable
{
    private readonly SafeFileHandle handle;

    public LogFile(StoreFiles files)
    {
        handle = File.OpenHandle(files.Log, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite);
        DiskFile.FlushDirectory(files.Directory);
    }

    public long Length => RandomAccess.GetLength(handle);

    public void Flush() => RandomAccess.FlushToDisk(handle);

    /// <summary>Puts the log away into the data file. The log is flushed first: until the data file is whole again, the log is the only good copy.</summary>
    public void PutAway(LiteDatabase db)
    {
        Flush();
        db.Checkpoint();
    }

    public void Dispose() => handle.Dispose();
}
