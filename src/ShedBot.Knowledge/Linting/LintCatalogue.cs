using System.Collections.Immutable;
using System.Reflection;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>Every rule of the linter, for whoever asks what a code means.</summary>
public static class LintCatalogue
{
    /// <summary>By code.</summary>
    public static ImmutableArray<LintRule> All { get; } =
    [
        .. new[] { typeof(TextRules), typeof(ShapeRules), typeof(ReferenceRules), typeof(StrengthRules), typeof(ReachRules), typeof(WorkRules), typeof(PhraseRules), typeof(ServiceRules) }
            .SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Static))
            .Select(f => (LintRule)f.GetValue(null)!)
            .OrderBy(r => r.Code, StringComparer.Ordinal),
    ];

    /// <param name="code">As in a report, R021; upper or lower case.</param>
    /// <returns>Null when there is no such code.</returns>
    public static LintRule? Find(string code) =>
        All.FirstOrDefault(r => string.Equals(r.Code, code.Trim(), StringComparison.OrdinalIgnoreCase));
}
