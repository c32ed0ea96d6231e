using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;

namespace ShedBot.Knowledge.Problems;

/// <summary>Collects what is wrong; nothing stops at the first problem.</summary>
internal sealed class ProblemList
{
    private readonly List<Problem> problems = [];

    public void Add(LintRule rule, string file, int line, int column, string what, string mend = "") =>
        problems.Add(new Problem(rule, file, line, column, what, mend));

    /// <summary>At a place in the file, or in the file that the place itself names: a club's change stands in another one than the rule it changes.</summary>
    public void Add(LintRule rule, string file, Node at, string what, string mend = "") =>
        Add(rule, at.File ?? file, at.Line, at.Column, what, mend);

    public bool HasErrors => problems.Exists(p => p.Severity == Severity.Error);

    public bool Has(LintRule rule) => problems.Exists(p => p.Rule == rule);

    public ImmutableArray<Problem> Sorted() => [.. problems.Distinct().Order()];
}
