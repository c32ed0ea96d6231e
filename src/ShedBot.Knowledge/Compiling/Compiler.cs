using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>Rules without errors to the knowledge that the coach uses.</summary>
internal static class Compiler
{
    public static KnowledgeBase Compile(Draft rules, CompileOptions options, string version) => new(
        version,
        Model(rules, options),
        ById(rules.Complaints, r => r.Id),
        ById(rules.Findings, r => r.Id),
        ById(rules.Facts, r => r.Id),
        ById(rules.Faults, r => r.Id),
        ById(rules.Checks, r => r.Id),
        ById(rules.Covers, r => r.Id),
        ById(rules.Repairs, r => r.Id),
        ById(rules.HowTos, r => r.Id),
        ById(rules.Emergencies, r => r.Id),
        [.. rules.Words.Select(w => w.Rule)],
        rules.Triages[0].Rule,
        ById(rules.Service, r => r.Id));

    private static DiagnosticModel Model(Draft rules, CompileOptions options)
    {
        var seen = CompileFindings.All(rules, options);
        var priors = Priors.Of(rules, options);
        var other = SomethingElse.Of(rules, seen, priors, options);
        var learnt = options.Learnt ?? Learnt.Nothing;
        return DiagnosticModel.Create(
            [.. priors.Select(p => new Fault(p.Key, Priors.Times(p.Value, learnt.TimesOf(p.Key)))), other.Fault],
            other.Findings,
            rules.Checks.Select(c => c.Rule).OrderBy(c => c.Id, StringComparer.Ordinal).Select(c => CompileWork.Check(c, options)),
            rules.Repairs.Select(r => r.Rule).OrderBy(r => r.Id, StringComparer.Ordinal).Select(r => CompileWork.Repair(r, learnt)),
            rules.Covers.Select(c => c.Rule).OrderBy(c => c.Id, StringComparer.Ordinal).Select(CompileWork.Cover),
            options.HelpCost);
    }

    private static ImmutableSortedDictionary<string, T> ById<T>(ImmutableArray<Written<T>> rules, Func<T, string> id) =>
        rules.ToImmutableSortedDictionary(r => id(r.Rule), r => r.Rule, StringComparer.Ordinal);
}
