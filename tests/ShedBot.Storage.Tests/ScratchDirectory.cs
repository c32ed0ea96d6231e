namespace ShedBot.Storage.Tests;

/// <summary>A directory of its own for each test, gone afterwards.</summary>
public sealed class ScratchDirectory : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("shedbot-storage-").FullName;

    public string Data => File("shed.db");

    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Every file but the lock, with its content.</summary>
    public SortedDictionary<string, string> Contents() => new(
        Directory.GetFiles(Path)
            .Where(f => !f.EndsWith(".lock", StringComparison.Ordinal))
            .ToDictionary(f => System.IO.Path.GetFileName(f), f => Convert.ToHexString(System.IO.File.ReadAllBytes(f))),
        StringComparer.Ordinal);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
