using System.Collections.Immutable;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Loading;

/// <summary>What to go on with after rule files changed under a running coach.</summary>
/// <param name="Use">The new knowledge when it has no errors, else the one before.</param>
/// <param name="Outcome">Which of the two it is, so that it can be said.</param>
/// <param name="Problems">Of the new files, by file and line.</param>
public sealed record Reload(KnowledgeBase Use, ReloadOutcome Outcome, ImmutableArray<Problem> Problems)
{
    /// <summary>A broken file never takes a running coach down: it keeps the last good rules and says so.</summary>
    public static Reload From(KnowledgeBase current, IReadOnlyList<RuleText> files)
    {
        var result = KnowledgeLoader.Load(files);
        return result.Knowledge is not { } fresh ? new Reload(current, ReloadOutcome.KeptLastGood, result.Problems)
            : fresh.Version == current.Version ? new Reload(current, ReloadOutcome.Unchanged, result.Problems)
            : new Reload(fresh, ReloadOutcome.Taken, result.Problems);
    }

    /// <summary>One sentence for the log and for moderators.</summary>
    public string Say() => Outcome switch
    {
        ReloadOutcome.Taken => $"The changed rules are in use now (version {Use.Version}).",
        ReloadOutcome.Unchanged => $"The rules have not changed (version {Use.Version}).",
        _ => $"The changed rules have {Errors(Problems.Count(p => p.Severity == Severity.Error))} and are not used; the last good ones stay (version {Use.Version}).",
    };

    private static string Errors(int count) => count == 1 ? "1 error" : $"{count} errors";
}

public enum ReloadOutcome
{
    Taken,
    Unchanged,
    KeptLastGood,
}
