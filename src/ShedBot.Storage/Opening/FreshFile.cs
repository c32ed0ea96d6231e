using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Makes a new, empty store under another name and moves it into place, so that a half-made one is never met.</summary>
internal static class FreshFile
{
    public static void Make(StoreFiles files, StoreSchema schema)
    {
        // What a crash left of an earlier try: nobody ever saved into it.
        File.Delete(files.Fresh);
        File.Delete(StoreFiles.Beside(files.Fresh, "-log"));
        try
        {
            using (var db = Lite.Make(files.Fresh))
            {
                About.Write(db, schema.Current);
                Shelf.EnsureIndexes(db);
                db.Checkpoint();
            }

            DiskFile.Flush(files.Fresh);
            File.Move(files.Fresh, files.Data, overwrite: true);
            DiskFile.FlushDirectory(files.Directory);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or LiteException)
        {
            throw new StoreRefusedException(
                RefusalCodes.CannotWrite, $"A new data file cannot be made in {files.Directory}: {e.Message} Is the disk full or write-protected?", e);
        }
    }
}
