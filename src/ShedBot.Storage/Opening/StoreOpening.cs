using LiteDB;
using ShedBot.Storage.Checking;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage.Opening;

/// <summary>Brings a store up in steps that write nothing until everything that is there was read and found good.</summary>
internal static class StoreOpening
{
    /// <summary>To be called with the lock held.</summary>
    public static (LiteDatabase Database, IntegrityReport Report) Open(StoreFiles files, StoreSchema schema)
    {
        RefuseStrays(files);
        if (StoreFiles.LengthOf(files.Data) == 0)
        {
            FreshFile.Make(files, schema);
        }

        var report = Inspect(files.Data, schema);
        var db = Lite.Open(files.Data);
        try
        {
            if (report.Schema < schema.Current)
            {
                Upgrade(db, files, schema, report.Schema);
                report = report with { Schema = schema.Current };
            }

            return (db, report);
        }
        catch
        {
            db.Dispose();
            throw;
        }
    }

    /// <summary>Reads a store from end to end without writing to it.</summary>
    /// <exception cref="StoreRefusedException">It is not ours, is newer than this program, or is damaged.</exception>
    public static IntegrityReport Inspect(string data, StoreSchema schema)
    {
        var file = Path.GetFileName(data);
        FileMark.Check(data);
        try
        {
            using var db = Lite.OpenToRead(data);
            var version = db.CollectionExists(About.Collection) ? About.Find(db) : null;
            if (version is null)
            {
                throw new StoreRefusedException(
                    RefusalCodes.NotOurFile, $"{file} is a LiteDB file, but not one of ShedBot's. Give another path for the data file.");
            }

            if (version > schema.Current)
            {
                throw new StoreRefusedException(
                    RefusalCodes.NewerSchema,
                    $"{file} was written by a newer ShedBot (its layout is version {version}, this one knows up to {schema.Current}). "
                    + "Start the newer ShedBot, or put back a backup that was made before the upgrade.");
            }

            // Documents of an older layout cannot be read as they are; their check sums are looked at when they are brought up.
            var (counts, problems) = version == schema.Current ? IntegrityWalk.Take(db) : IntegrityWalk.Nothing;
            var report = new IntegrityReport(
                counts, problems, version.Value, StoreFiles.LengthOf(data), StoreFiles.LengthOf(StoreFiles.Beside(data, "-log")));
            return report.IsSound ? report : throw Damaged(file, string.Join(" ", problems.Take(3)), null);
        }
        catch (Exception e) when (e is not StoreRefusedException and not OutOfMemoryException)
        {
            throw Damaged(file, e.Message, e);
        }
    }

    private static void Upgrade(LiteDatabase db, StoreFiles files, StoreSchema schema, int from)
    {
        var before = StoreFiles.Beside(files.Data, $"-before-{schema.Current}");
        try
        {
            Shelf.EnsureIndexes(db);
            using var log = new LogFile(files);
            log.PutAway(db);
            File.Delete(before);
            DiskFile.Copy(files.Data, before);
            schema.Upgrade(db, from);
            log.PutAway(db);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            throw new StoreRefusedException(
                RefusalCodes.UpgradeFailed,
                $"{Path.GetFileName(files.Data)} could not be brought from layout {from} to {schema.Current}: {e.Message} "
                + "It is as it was. Start the ShedBot that was used last, and tell its makers.",
                e);
        }
    }

    private static StoreRefusedException Damaged(string file, string problem, Exception? cause) => new(
        RefusalCodes.Damaged,
        $"{file} is damaged: {problem} Nothing was changed. Move {file} and its log file together to a safe place, "
        + $"put the last good backup in as {file}, and start again.",
        cause);

    private static void RefuseStrays(StoreFiles files)
    {
        if (files.Strays() is { Count: > 0 } strays)
        {
            throw new StoreRefusedException(
                RefusalCodes.StrayFiles,
                $"Beside the data file lies {string.Join(", ", strays)}, left by a rebuild that broke off. "
                + "Find out which file holds the club's data, move the others to a safe place, and start again.");
        }

        if (StoreFiles.LengthOf(files.Data) == 0 && StoreFiles.LengthOf(files.Log) > 0)
        {
            throw new StoreRefusedException(
                RefusalCodes.LogWithoutData,
                $"{Path.GetFileName(files.Log)} holds saves, but {Path.GetFileName(files.Data)} is missing or empty. "
                + "Put the data file that belongs to it back; or move the log file to a safe place to begin anew.");
        }
    }
}
