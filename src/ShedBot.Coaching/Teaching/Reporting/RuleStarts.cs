using System.Collections.Immutable;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Sheets begun from a report, with what it knows filled in.</summary>
internal static class RuleStarts
{
    /// <param name="complaint">Its id; empty for one that the rules do not know.</param>
    public static BeginSheet Cause(string complaint) => new(CauseSheet.Name, Given: Given("complaint", complaint.Length > 0 ? complaint : Choice.New));

    /// <param name="finding">Its id.</param>
    public static BeginSheet Check(string finding) => new("check", Given: Given("finding", finding));

    private static ImmutableSortedDictionary<string, ImmutableArray<string>> Given(string question, string answer) =>
        ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal).Add(question, [answer]);
}
