using System.Collections.Immutable;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Linting;

/// <summary>What the lint rules look things up in. Where an id stands twice, the first one counts.</summary>
internal sealed class LintContext
{
    private static readonly ImmutableArray<string> YesNo = [Finding.No, Finding.Yes];

    private readonly string firstFile;
    private readonly string? clubFile;
    private readonly ProblemList problems;

    /// <param name="clubFile">The file of a club that lies over these rules; null when none does.</param>
    public LintContext(Draft rules, CompileOptions options, string firstFile, ProblemList problems, string? clubFile = null)
    {
        Rules = rules;
        Options = options;
        this.firstFile = firstFile;
        this.clubFile = clubFile;
        this.problems = problems;
        Findings = First(rules.Findings, r => r.Id);
        Facts = First(rules.Facts, r => r.Id);
        Faults = First(rules.Faults, r => r.Id);
        Complaints = First(rules.Complaints, r => r.Id);
        Repairs = First(rules.Repairs, r => r.Id);
        Service = First(rules.Service, r => r.Id);
        Covers = First(rules.Covers, r => r.Id);
        Emergencies = First(rules.Emergencies, r => r.Id);
        States = rules.Findings.Select(f => (f.Rule.Id, States: f.Rule.States.Select(s => s.Id).ToImmutableArray()))
            .Concat(rules.Complaints.Select(c => (c.Rule.Id, States: YesNo)))
            .DistinctBy(f => f.Id, StringComparer.Ordinal)
            .ToDictionary(f => f.Id, f => f.States, StringComparer.Ordinal);
    }

    public Draft Rules { get; }

    public CompileOptions Options { get; }

    public Dictionary<string, Written<FindingRule>> Findings { get; }

    public Dictionary<string, Written<FactRule>> Facts { get; }

    public Dictionary<string, Written<FaultRule>> Faults { get; }

    public Dictionary<string, Written<ComplaintRule>> Complaints { get; }

    public Dictionary<string, Written<RepairRule>> Repairs { get; }

    public Dictionary<string, Written<ServiceRule>> Service { get; }

    public Dictionary<string, Written<CoverRule>> Covers { get; }

    public Dictionary<string, Written<EmergencyRule>> Emergencies { get; }

    /// <summary>The states of every finding and complaint, the normal one first.</summary>
    public Dictionary<string, ImmutableArray<string>> States { get; }

    public void Tell<T>(LintRule rule, Written<T> at, Node node, string what, string mend = "") => problems.Add(rule, at.File, node, what, mend);

    /// <summary>Of two that clash, at the later one; but at the club's where only one of them is the club's.</summary>
    /// <param name="what">From where the other one stands to one sentence.</param>
    public void TellEither(LintRule rule, (string File, Node Node) first, (string File, Node Node) later, Func<string, string> what, string mend)
    {
        var (at, other) = IsClubs(first) && !IsClubs(later) ? (first, later) : (later, first);
        problems.Add(rule, at.File, at.Node, what($"{other.Node.File ?? other.File}:{other.Node.Line}"), mend);

        bool IsClubs((string File, Node Node) rule) => clubFile is not null && (rule.Node.File ?? rule.File) == clubFile;
    }

    /// <summary>At the top of the first file, for what is missing as a whole.</summary>
    public void TellAll(LintRule rule, string what, string mend) => problems.Add(rule, firstFile, 1, 1, what, mend);

    /// <summary>The leak of each state, aligned with <see cref="States"/>.</summary>
    public ImmutableArray<double> Leak(string finding) => Findings.TryGetValue(finding, out var rule)
        ? Strengths.Leak(rule.Rule, Options)
        : [1 - Options.ComplaintLeak, Options.ComplaintLeak];

    private static Dictionary<string, Written<T>> First<T>(ImmutableArray<Written<T>> rules, Func<T, string> id) => rules
        .Where(r => id(r.Rule).Length > 0)
        .DistinctBy(r => id(r.Rule), StringComparer.Ordinal)
        .ToDictionary(r => id(r.Rule), StringComparer.Ordinal);
}
