namespace ShedBot.Tests;

/// <summary>Where the sources are: the folder above the tests that holds the solution.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Knowledge => Path.Combine(Root, "knowledge");

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "ShedBot.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("The tests must run below the folder of ShedBot.sln.");
    }
}
