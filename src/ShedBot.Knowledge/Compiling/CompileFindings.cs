using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>Findings and complaints, each with the links of the faults that show as them.</summary>
internal static class CompileFindings
{
    private static readonly ImmutableArray<string> YesNo = [Finding.No, Finding.Yes];

    /// <summary>By id, findings first and then complaints, without the links of 'something else'.</summary>
    public static ImmutableArray<Finding> All(Draft rules, CompileOptions options, Shared? shared = null)
    {
        var faults = rules.Faults.Select(f => f.Rule).OrderBy(f => f.Id, StringComparer.Ordinal).ToList();
        return
        [
            .. rules.Findings.Select(f => f.Rule).OrderBy(f => f.Id, StringComparer.Ordinal)
                .Select(f => Linked(f, f.Id, [.. f.States.Select(s => s.Id)], Strengths.Leak(f, options), faults, options.Learnt, shared)),
            .. rules.Complaints.Select(c => c.Rule).OrderBy(c => c.Id, StringComparer.Ordinal)
                .Select(c => Linked(c, c.Id, YesNo, [1 - options.ComplaintLeak, options.ComplaintLeak], faults, options.Learnt, shared)),
        ];
    }

    private static Finding Linked(
        object rule, string id, ImmutableArray<string> states, ImmutableArray<double> leak, List<FaultRule> faults, Learnt? learnt, Shared? shared)
    {
        var links = ImmutableArray.CreateBuilder<Link>();
        foreach (var fault in faults)
        {
            if (fault.ShowsAs.TryGetValue(id, out var words))
                links.Add(shared?.LinkOf(rule, id, fault, learnt) ?? new Link(fault.Id, GrossStrength.ToNet(Gross(fault.Id, words), leak.AsSpan())));
        }

        return new Finding(id, states, leak, links.ToImmutable());

        double[] Gross(string fault, IReadOnlyDictionary<string, string> words) =>
            learnt is null ? Strengths.Gross(states, words) : Strengths.Learnt(states, words, leak, state => learnt.ChanceOf(fault, id, state));
    }
}
