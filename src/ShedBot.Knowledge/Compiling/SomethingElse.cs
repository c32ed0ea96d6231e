using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>The fault that stands for what no rule lists: it shows everything about as often as an average machine in trouble does.</summary>
internal static class SomethingElse
{
    /// <summary>The fault itself, and the findings with its links added.</summary>
    public static (Fault Fault, ImmutableArray<Finding> Findings) Of(
        Draft rules, ImmutableArray<Finding> findings, ImmutableSortedDictionary<string, double> priors, CompileOptions options)
    {
        var odds = priors.Values.Select(p => p / (1 - p)).Sum() * options.OtherShare / (1 - options.OtherShare);
        var fault = new Fault(KnowledgeBase.SomethingElse, odds / (1 + odds), IsOther: true);
        return (fault, [.. findings.Select(f => WithBaseRate(f, priors, rules))]);
    }

    /// <summary>
    /// The gross chance of each state is its average over the listed faults, weighted with their priors; a fault that does not show as the
    /// finding brings the leak. So hearing of a finding moves 'something else' about as much as it moves the listed faults together.
    /// </summary>
    private static Finding WithBaseRate(Finding finding, ImmutableSortedDictionary<string, double> priors, Draft rules)
    {
        var all = priors.Values.Sum();
        var excess = new double[finding.States.Length];
        foreach (var fault in rules.Faults)
        {
            if (!fault.Rule.ShowsAs.TryGetValue(finding.Id, out var words)) continue;
            var shown = Strengths.Gross(finding.States, words);
            for (var v = 1; v < excess.Length; v++)
                excess[v] += Math.Max(0, shown[v] - finding.Leak[v]) * priors[fault.Rule.Id] / all;
        }

        // What goes beyond the leak must fit beside it.
        var room = Strengths.MaxSum - finding.Leak.Skip(1).Sum();
        var scale = Math.Min(1, room / Math.Max(excess.Sum(), double.Epsilon));
        var gross = finding.Leak.Select((leak, v) => v == 0 ? 0 : leak + (excess[v] * scale)).ToArray();
        return finding with { Links = finding.Links.Add(new Link(KnowledgeBase.SomethingElse, GrossStrength.ToNet(gross, finding.Leak.AsSpan()))) };
    }
}
