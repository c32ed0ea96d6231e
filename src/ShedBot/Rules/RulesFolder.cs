using System.CommandLine;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Rules;

/// <summary>Where the club's rules are.</summary>
internal static class RulesFolder
{
    private const string FolderName = "knowledge";

    public static Option<string?> Option() => new("--knowledge")
    {
        Description = "The folder of rule files. Without it: the folder 'knowledge' here or above, else the one beside the program.",
        HelpName = "DIR",
    };

    /// <summary>The folder that was asked for; else the nearest folder 'knowledge' with rules at or above here; else the one beside the program.</summary>
    /// <returns>Null when there is none.</returns>
    public static string? Find(string? asked, string here, string besideProgram)
    {
        if (!string.IsNullOrWhiteSpace(asked)) return Directory.Exists(asked) ? asked : null;
        for (var folder = new DirectoryInfo(here); folder is not null; folder = folder.Parent)
        {
            var candidate = Path.Combine(folder.FullName, FolderName);
            if (HasRules(candidate)) return candidate;
        }

        var shipped = Path.Combine(besideProgram, FolderName);
        return HasRules(shipped) ? shipped : null;
    }

    /// <summary>Says on <paramref name="errors"/> why there are no rules to go on with.</summary>
    public static string? FindOrSay(string? asked, TextWriter errors)
    {
        var folder = Find(asked, Environment.CurrentDirectory, AppContext.BaseDirectory);
        if (folder is null)
        {
            errors.WriteLine(string.IsNullOrWhiteSpace(asked)
                ? "There is no folder 'knowledge' with rule files here, above, or beside the program. Name one with --knowledge DIR."
                : $"There is no folder '{asked}' to read rules from.");
        }

        return folder;
    }

    /// <returns>Null when the rules cannot be used; <paramref name="errors"/> says why.</returns>
    public static KnowledgeBase? Load(string? asked, TextWriter errors) => LoadBase(asked, errors)?.Knowledge;

    /// <inheritdoc cref="Load"/>
    public static RuleBase? LoadBase(string? asked, TextWriter errors)
    {
        if (FindOrSay(asked, errors) is not { } folder) return null;
        try
        {
            var rules = RuleBase.Of(KnowledgeFolder.Read(folder));
            if (rules.Knowledge is not null) return rules;
            RulesReport.Refused(folder, rules.Problems, errors);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine($"The rules in {folder} cannot be read: {e.Message}");
            return null;
        }
    }

    private static bool HasRules(string folder) =>
        Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories).Any();
}
