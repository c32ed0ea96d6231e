using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Layers.Safety;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>Every rule of the linter, for whoever asks what a code means.</summary>
public static class LintCatalogue
{
    /// <summary>By code.</summary>
    public static ImmutableArray<LintRule> All { get; } =
    [
        .. new[]
            {
                In(typeof(TextRules)), In(typeof(ShapeRules)), In(typeof(ReferenceRules)), In(typeof(StrengthRules)),
                In(typeof(ReachRules)), In(typeof(WorkRules)), In(typeof(PhraseRules)), In(typeof(ServiceRules)),
                In(typeof(LayerRules)), In(typeof(SafetyRules)),
            }
            .SelectMany(rules => rules)
            .OrderBy(r => r.Code, StringComparer.Ordinal),
    ];

    /// <param name="code">As in a report, R021; upper or lower case.</param>
    /// <returns>Null when there is no such code.</returns>
    public static LintRule? Find(string code) =>
        All.FirstOrDefault(r => string.Equals(r.Code, code.Trim(), StringComparison.OrdinalIgnoreCase));

    // The attribute keeps the fields in a program that is compiled ahead, where what nobody names is left out.
    private static IEnumerable<LintRule> In([DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicFields)] Type rules) =>
        rules.GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => (LintRule)f.GetValue(null)!);
}
