using System.Collections.Immutable;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Loading;

/// <summary>What to go on with after rule files changed under a running coach.</summary>
/// <param name="Use">The new rules when they have no errors, else the ones before. Their knowledge is not null.</param>
/// <param name="Outcome">Which of the two it is, so that it can be said.</param>
/// <param name="Problems">Of the new files, by file and line.</param>
public sealed record Reload(RuleBase Use, ReloadOutcome Outcome, ImmutableArray<Problem> Problems)
{
    /// <summary>A broken file never takes a running coach down: it keeps the last good rules and says so.</summary>
    /// <param name="current">Rules without errors.</param>
    public static Reload From(RuleBase current, IReadOnlyList<RuleText> files)
    {
        var fresh = RuleBase.Of(files);
        return fresh.Knowledge is null ? new Reload(current, ReloadOutcome.KeptLastGood, fresh.Problems)
            : fresh.Knowledge.Version == current.Knowledge!.Version ? new Reload(current, ReloadOutcome.Unchanged, fresh.Problems)
            : new Reload(fresh, ReloadOutcome.Taken, fresh.Problems);
    }

    /// <summary>One sentence for the log and for moderators.</summary>
    public string Say() => Outcome switch
    {
        ReloadOutcome.Taken => $"The changed rules are in use now (version {Use.Knowledge!.Version}).",
        ReloadOutcome.Unchanged => $"The rules have not changed (version {Use.Knowledge!.Version}).",
        _ => $"The changed rules have {Errors(Problems.Count(p => p.Severity == Severity.Error))} and are not used; the last good ones stay (version {Use.Knowledge!.Version}).",
    };

    private static string Errors(int count) => count == 1 ? "1 error" : $"{count} errors";
}

public enum ReloadOutcome
{
    Taken,
    Unchanged,
    KeptLastGood,
}
