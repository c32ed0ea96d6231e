namespace ShedBot.Storage.Opening;

/// <summary>
/// One process for one store: on Linux a second one could open the same data file unhindered and destroy saves without a sound.
/// The lock is an open file that goes with the process, however it dies; the file itself stays behind and means nothing.
/// </summary>
internal static class StoreLock
{
    // EWOULDBLOCK on Linux and on BSD-like systems, and the sharing violation of Windows: all that a held lock can look like.
    private static readonly int[] HeldCodes = [11, 35, unchecked((int)0x80070020)];

    public static FileStream Take(StoreFiles files)
    {
        if (!Directory.Exists(files.Directory))
        {
            throw new StoreRefusedException(
                RefusalCodes.NoDirectory, $"There is no directory {files.Directory}. Make it, or give another path for the data file.");
        }

        try
        {
            return new FileStream(files.Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (HeldCodes.Contains(e.HResult))
        {
            throw new StoreRefusedException(
                RefusalCodes.InUse, $"{files.Data} is in use by another ShedBot. Stop that one first, or give another path for the data file.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreRefusedException(
                RefusalCodes.CannotWrite, $"{files.Directory} cannot be written to: {e.Message} Give this user the right to write there.", e);
        }
    }
}
