using System.Globalization;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Rules;

/// <summary>What is wrong with rules, in words.</summary>
internal static class RulesReport
{
    public static int Errors(IEnumerable<Problem> problems) => problems.Count(p => p.Severity == Severity.Error);

    /// <summary>"2 errors and 1 warning", "no problems".</summary>
    public static string Summary(IReadOnlyCollection<Problem> problems)
    {
        var errors = Errors(problems);
        var warnings = problems.Count - errors;
        return (errors, warnings) switch
        {
            (0, 0) => "no problems",
            (0, _) => Count(warnings, "warning"),
            (_, 0) => Count(errors, "error"),
            _ => $"{Count(errors, "error")} and {Count(warnings, "warning")}",
        };
    }

    public static string Count(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    /// <summary>How many of each kind there are: "2 complaints, 5 findings, ...".</summary>
    public static string Holds(KnowledgeBase knowledge) => string.Join(", ",
        Count(knowledge.Complaints.Count, "complaint"),
        Count(knowledge.Findings.Count, "finding"),
        Count(knowledge.Facts.Count, "fact"),
        Count(knowledge.Faults.Count, "fault"),
        Count(knowledge.Checks.Count, "check"),
        Count(knowledge.Covers.Count, "cover"),
        Count(knowledge.Repairs.Count, "repair"),
        Count(knowledge.Service.Count, "service task"),
        Count(knowledge.HowTos.Count, "how-to"),
        knowledge.Emergencies.Count == 1 ? "1 emergency." : $"{knowledge.Emergencies.Count.ToString(CultureInfo.InvariantCulture)} emergencies.");

    public static void Refused(string folder, IReadOnlyCollection<Problem> problems, TextWriter errors)
    {
        foreach (var problem in problems) errors.WriteLine(problem);
        errors.WriteLine($"The rules in {folder} have {Summary(problems)}, so nothing was started. Mend the errors and start again.");
    }
}
