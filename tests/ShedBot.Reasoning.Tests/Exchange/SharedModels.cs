using ShedBot.Reasoning.Exchange;

namespace ShedBot.Reasoning.Tests.Exchange;

/// <summary>
/// Small invented models with values from an independent exact program. They are kept beside the project, not in it: a folder
/// <c>shared/diagnosis</c> next to some folder above, or the folder that SHEDBOT_SHARED names.
/// </summary>
internal static class SharedModels
{
    /// <summary>All of them, or none, with a line of output that says so.</summary>
    public static IReadOnlyList<ModelLine> Read(Action<string> say)
    {
        if (Find() is { } file) return [.. File.ReadLines(file).Where(l => l.Length > 0).Select(ModelLine.Read)];
        say("The shared models are not here, so nothing was compared: put shared/diagnosis/models.jsonl beside the project, or set SHEDBOT_SHARED.");
        return [];
    }

    private static string? Find()
    {
        var places = new List<string>();
        if (Environment.GetEnvironmentVariable("SHEDBOT_SHARED") is { Length: > 0 } named) places.Add(named);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            places.Add(Path.Combine(folder.FullName, "shared"));
        return places.Select(place => Path.Combine(place, "diagnosis", "models.jsonl")).FirstOrDefault(File.Exists);
    }
}
