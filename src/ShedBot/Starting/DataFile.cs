namespace ShedBot.Starting;

/// <summary>Where the data file is.</summary>
internal static class DataFile
{
    /// <summary>Our own folder is made; a folder that somebody named and that is not there is more likely a slip of the pen.</summary>
    /// <param name="standard">The file that is used when none was named.</param>
    /// <returns>The full path.</returns>
    public static string Prepare(string asked, string standard)
    {
        var file = Path.GetFullPath(asked);
        var ours = Path.GetDirectoryName(Path.GetFullPath(standard))!;
        if (Path.GetDirectoryName(file) != ours || Directory.Exists(ours)) return file;
        // What members told is for nobody else on the machine.
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(ours);
        else Directory.CreateDirectory(ours, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return file;
    }
}
