using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>One of the approved conversations of the practice terminal: what the rider did, and what was asked after it.</summary>
/// <param name="Steps">In order; the first is the opening.</param>
/// <param name="IsMended">Whether it ends with the trouble mended; not every lever can be put right in one sitting.</param>
internal sealed partial record ConversationScript(string Name, ImmutableArray<ConversationStep> Steps, bool IsMended)
{
    public const string Mended = "Good. That is that mended.";

    private const string Opens = "```text\n", Closes = "```\n";

    /// <summary>The folder docs/conversations of this checkout, found by walking up from where the tests run.</summary>
    public static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (Directory.Exists(Path.Combine(at.FullName, "docs", "conversations"))) return Path.Combine(at.FullName, "docs", "conversations");
        }

        throw new DirectoryNotFoundException("docs/conversations is above the tests in every checkout.");
    }

    /// <summary>The first conversation of a page.</summary>
    public static ConversationScript Read(string file)
    {
        var text = File.ReadAllText(Path.Combine(Folder(), file)).ReplaceLineEndings("\n");
        var from = text.IndexOf(Opens, StringComparison.Ordinal) + Opens.Length;
        var lines = text[from..text.IndexOf(Closes, from, StringComparison.Ordinal)].Split('\n');
        var steps = ImmutableArray.CreateBuilder<ConversationStep>();
        var options = ImmutableDictionary<string, string>.Empty;
        for (var i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith("> ", StringComparison.Ordinal)) continue;
            var typed = lines[i][2..];
            var after = lines.Skip(i + 1).TakeWhile(l => !l.StartsWith("> ", StringComparison.Ordinal)).ToList();
            if (typed == "bye") break;
            var next = Options(after);
            steps.Add(new ConversationStep(typed, options.GetValueOrDefault(typed), next));
            options = next;
        }

        return new ConversationScript(file, steps.ToImmutable(), lines.Any(l => l.Contains(Mended, StringComparison.Ordinal)));
    }

    /// <summary>Lines such as <c>  [1] It swings a good way over</c> and <c>  [n] Not sure   [w] Why do you ask?</c>.</summary>
    private static ImmutableDictionary<string, string> Options(List<string> lines)
    {
        var found = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var line in lines.Where(l => l.StartsWith("  [", StringComparison.Ordinal)))
        {
            foreach (var match in Option().Matches(line).Cast<Match>()) found[match.Groups[1].Value] = match.Groups[2].Value.Trim();
        }

        return found.ToImmutable();
    }

    [GeneratedRegex(@"\[([0-9]+|[a-z])\] (.+?)(?=   \[|$)")]
    private static partial Regex Option();
}

/// <param name="Typed">What the rider typed in the terminal.</param>
/// <param name="Label">The label of the option that this picks; null when it was words.</param>
/// <param name="After">The options that were offered after it, by their keys.</param>
internal sealed record ConversationStep(string Typed, string? Label, ImmutableDictionary<string, string> After);
