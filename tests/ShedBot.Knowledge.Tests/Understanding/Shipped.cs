using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>The rules of the repository and a listener for them, read once.</summary>
internal static class Shipped
{
    public static readonly string Root = FindRoot();

    public static readonly KnowledgeBase Knowledge = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Root, "knowledge"))).Knowledge!;

    public static readonly Listener Listener = Listener.For(Knowledge);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "ShedBot.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No ShedBot.sln above the tests.");
        return folder.FullName;
    }
}
