namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>Where the platform's published description (<c>discord/openapi.json</c>) may lie: the folder that SHEDBOT_SHARED names, or a
/// folder <c>shared</c> beside or in some folder above the running program. It is not part of this project.</summary>
internal static class SharedFolder
{
    public const string Variable = "SHEDBOT_SHARED";

    /// <returns>The full path of the description, or null when it is nowhere to be found.</returns>
    public static string? Description(string from, string? named) =>
        Places(from, named).Select(place => Path.Combine(place, "discord", "openapi.json")).FirstOrDefault(File.Exists);

    private static IEnumerable<string> Places(string from, string? named)
    {
        if (named is { Length: > 0 }) yield return Path.GetFullPath(named);
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
            yield return Path.Combine(folder.FullName, "shared");
    }
}
