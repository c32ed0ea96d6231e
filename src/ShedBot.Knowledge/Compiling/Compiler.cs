using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>Rules without errors to the knowledge that the coach uses.</summary>
internal static class Compiler
{
    /// <param name="shared">The base, where these are a club's rules over it; null when there is nothing to share.</param>
    public static KnowledgeBase Compile(Draft rules, CompileOptions options, string version, Shared? shared = null) => new(
        version,
        Model(rules, options, Shared.Fits(options) ? shared : null),
        Shared.ById(rules.Complaints, r => r.Id, shared?.From.Complaints, shared?.Like.Complaints),
        Shared.ById(rules.Findings, r => r.Id, shared?.From.Findings, shared?.Like.Findings),
        Shared.ById(rules.Facts, r => r.Id, shared?.From.Facts, shared?.Like.Facts),
        Shared.ById(rules.Faults, r => r.Id, shared?.From.Faults, shared?.Like.Faults),
        Shared.ById(rules.Checks, r => r.Id, shared?.From.Checks, shared?.Like.Checks),
        Shared.ById(rules.Covers, r => r.Id, shared?.From.Covers, shared?.Like.Covers),
        Shared.ById(rules.Repairs, r => r.Id, shared?.From.Repairs, shared?.Like.Repairs),
        Shared.ById(rules.HowTos, r => r.Id, shared?.From.HowTos, shared?.Like.HowTos),
        Shared.ById(rules.Emergencies, r => r.Id, shared?.From.Emergencies, shared?.Like.Emergencies),
        shared is not null && rules.Words == shared.From.Words ? shared.Like.Words : [.. rules.Words.Select(w => w.Rule)],
        rules.Triages[0].Rule,
        shared is not null && rules.Eithers == shared.From.Eithers ? shared.Like.Eithers : [.. rules.Eithers.Select(e => e.Rule)],
        Shared.ById(rules.Service, r => r.Id, shared?.From.Service, shared?.Like.Service));

    private static DiagnosticModel Model(Draft rules, CompileOptions options, Shared? shared)
    {
        var seen = CompileFindings.All(rules, options, shared);
        var priors = Priors.Of(rules, options);
        var other = SomethingElse.Of(rules, seen, priors, options);
        var learnt = options.Learnt ?? Learnt.Nothing;
        return DiagnosticModel.Create(
            [.. priors.Select(p => new Fault(p.Key, Priors.Times(p.Value, learnt.TimesOf(p.Key)))), other.Fault],
            other.Findings,
            rules.Checks.Select(c => c.Rule).OrderBy(c => c.Id, StringComparer.Ordinal).Select(c => shared?.CheckOf(c) ?? CompileWork.Check(c, options)),
            rules.Repairs.Select(r => r.Rule).OrderBy(r => r.Id, StringComparer.Ordinal).Select(r => shared?.RepairOf(r, learnt) ?? CompileWork.Repair(r, learnt)),
            rules.Covers.Select(c => c.Rule).OrderBy(c => c.Id, StringComparer.Ordinal).Select(CompileWork.Cover),
            options.HelpCost);
    }
}
