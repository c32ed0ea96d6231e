using System.Runtime.CompilerServices;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>Holds a text against the approved one in <c>Class.name.approved.txt</c> beside the test. What differs is written to <c>.received.txt</c>, to be looked at and renamed.</summary>
internal static class Approved
{
    public static void Text(string text, string name, [CallerFilePath] string file = "")
    {
        var path = Path.Combine(Beside(file), $"{Path.GetFileNameWithoutExtension(file)}.{name}");
        var (approved, received) = (path + ".approved.txt", path + ".received.txt");
        if (File.Exists(approved) && File.ReadAllText(approved) == text)
        {
            File.Delete(received);
            return;
        }

        File.WriteAllText(received, text);
        Assert.Fail($"The text is not as approved. Look at {received}; if it is right, rename it to .approved.txt.");
    }

    /// <summary>A build may have replaced the front of source paths, so only the end is trusted.</summary>
    private static string Beside(string file)
    {
        var parts = file.Split('/', '\\');
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShedBot.sln"))) folder = folder.Parent;
        var root = folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
        return Path.Combine([root, "tests", .. parts[Array.LastIndexOf(parts, "ShedBot.Discord.Tests")..^1]]);
    }
}
