using ShedBot.Storage.Checking;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Copies;

/// <summary>
/// A copy of the data file. To restore: stop ShedBot, move the data file and its log away together, copy the backup to where the data file
/// was, start again.
/// </summary>
internal static class Backup
{
    private const string Unfinished = ".part";

    /// <summary>Copies under a name that shows it is not finished. To be called while nothing is written and the log is put away.</summary>
    public static void Take(StoreFiles files, string target)
    {
        if (StoreFiles.LengthOf(files.Log) != 0)
        {
            throw new StoreRefusedException(RefusalCodes.BadCopy, "The log could not be put away, so a copy would be incomplete. Try again later.");
        }

        try
        {
            File.Delete(target + Unfinished);
            DiskFile.Copy(files.Data, target + Unfinished);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreRefusedException(RefusalCodes.CannotWrite, $"No backup was made: {e.Message} Is there room, and the right to write there?", e);
        }
    }

    /// <summary>Reads the copy from end to end and gives it its name.</summary>
    public static IntegrityReport Finish(string target, StoreSchema schema)
    {
        IntegrityReport report;
        try
        {
            report = StoreOpening.Inspect(target + Unfinished, schema);
        }
        catch (StoreRefusedException e)
        {
            throw new StoreRefusedException(RefusalCodes.BadCopy, $"The backup did not read back, and was not kept: {e.Message}", e);
        }

        RefuseIfThere(target);
        File.Move(target + Unfinished, target);
        DiskFile.FlushDirectory(Path.GetDirectoryName(target)!);
        return report;
    }

    public static void RefuseIfThere(string target)
    {
        if (Path.Exists(target))
        {
            throw new StoreRefusedException(RefusalCodes.TargetExists, $"{target} is there already. Give a backup a name of its own.");
        }
    }
}
