using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge;

/// <summary>The rules of a club, checked, compiled and versioned. Immutable.</summary>
/// <param name="Version">A short hash of everything that was read; equal text gives an equal version.</param>
/// <param name="Model">
/// The rules as a model for the reasoning. Findings: every finding and every complaint (yes/no) under its own id; checks, repairs, covers
/// and faults under their rule's id; and the fault <see cref="SomethingElse"/>.
/// </param>
public sealed record KnowledgeBase(
    string Version,
    DiagnosticModel Model,
    ImmutableSortedDictionary<string, ComplaintRule> Complaints,
    ImmutableSortedDictionary<string, FindingRule> Findings,
    ImmutableSortedDictionary<string, FactRule> Facts,
    ImmutableSortedDictionary<string, FaultRule> Faults,
    ImmutableSortedDictionary<string, CheckRule> Checks,
    ImmutableSortedDictionary<string, CoverRule> Covers,
    ImmutableSortedDictionary<string, RepairRule> Repairs,
    ImmutableSortedDictionary<string, HowToRule> HowTos,
    ImmutableSortedDictionary<string, EmergencyRule> Emergencies,
    ImmutableArray<WordRule> Words,
    TriageRule Triage,
    ImmutableArray<EitherRule> Eithers,
    ImmutableSortedDictionary<string, ServiceRule> Service)
{
    /// <summary>The fault that stands for what no rule lists.</summary>
    public const string SomethingElse = "something-else";
}
