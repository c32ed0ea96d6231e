using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Opens LiteDB in the one way that was measured to be safe here.</summary>
internal static class Lite
{
    public static LiteDatabase Open(string path) => new(Settings(path, readOnly: false));

    /// <summary>Reads the data file and its log, and writes to neither, not even on closing.</summary>
    public static LiteDatabase OpenToRead(string path) => new(Settings(path, readOnly: true));

    /// <summary>Makes a new file. Ordinal, because ids that differ in case only are different ids.</summary>
    public static LiteDatabase Make(string path)
    {
        var settings = Settings(path, readOnly: false);
        settings.Collation = new Collation("/Ordinal");
        return new LiteDatabase(settings)
        {
            UtcDate = true,
            // Zero: never by itself. Its own way overwrites the data file before the log is safe on the disk; the writer does it in order.
            CheckpointSize = 0,
            Timeout = TimeSpan.FromSeconds(5),
        };
    }

    private static ConnectionString Settings(string path, bool readOnly) => new()
    {
        Filename = path,
        Connection = ConnectionType.Direct,
        ReadOnly = readOnly,
    };
}
