namespace ShedBot.Tests;

/// <summary>A folder of its own for one test; gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    public TempFolder() => Path = Directory.CreateTempSubdirectory("shedbot-").FullName;

    public string Path { get; }

    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>The rules of the invented bell, in a folder that the test may change.</summary>
    public string BellRules()
    {
        var folder = Directory.CreateDirectory(File("knowledge")).FullName;
        System.IO.File.Copy(BellRules(AppContext.BaseDirectory), System.IO.Path.Combine(folder, "bell.yaml"), overwrite: true);
        return folder;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);

    private static string BellRules(string besides) => System.IO.Path.Combine(besides, "Samples", "bell", "bell.yaml");
}
