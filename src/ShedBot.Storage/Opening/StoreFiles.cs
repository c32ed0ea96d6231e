namespace ShedBot.Storage.Opening;

/// <summary>The files of one store. The name of the log is LiteDB's choice, the others are ours.</summary>
internal sealed record StoreFiles(string Directory, string Data, string Log, string Lock, string Fresh)
{
    private static readonly string[] StrayMarks = ["-temp*", "-backup*"];

    public static StoreFiles At(string path)
    {
        var full = Path.GetFullPath(path);
        // Two names of one file must meet the same lock.
        var data = new FileInfo(full).LinkTarget is null ? full : File.ResolveLinkTarget(full, returnFinalTarget: true)!.FullName;
        return new(Path.GetDirectoryName(data)!, data, Beside(data, "-log"), data + ".lock", Beside(data, "-fresh"));
    }

    /// <summary>shed.db, -log: shed-log.db.</summary>
    public static string Beside(string path, string suffix) =>
        Path.Combine(Path.GetDirectoryName(path)!, Path.GetFileNameWithoutExtension(path) + suffix + Path.GetExtension(path));

    /// <summary>Files that a broken-off rebuild by some other tool leaves beside a store; which of them holds the truth, a program cannot know.</summary>
    public IReadOnlyList<string> Strays()
    {
        var name = Path.GetFileNameWithoutExtension(Data);
        return [.. StrayMarks
            .SelectMany(s => System.IO.Directory.EnumerateFiles(Directory, name + s + Path.GetExtension(Data)))
            .Select(f => Path.GetFileName(f)!)
            .Order(StringComparer.Ordinal)];
    }

    public static long LengthOf(string file) => File.Exists(file) ? new FileInfo(file).Length : 0;
}
