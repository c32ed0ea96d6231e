using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Turns;

/// <summary>Which complaints to offer to a rider whose words were not clear.</summary>
internal static class Complaints
{
    private const int Most = 6;

    /// <param name="heard">Complaints that were heard faintly, joined by a comma, best first.</param>
    public static IEnumerable<string> ToOffer(CaseView view, string heard) => heard
        .Split(',', StringSplitOptions.RemoveEmptyEntries)
        .Where(view.Knowledge.Complaints.ContainsKey)
        .Concat(view.Knowledge.Complaints.Keys.OrderByDescending(c => HowUsual(view.Model, c)).ThenBy(c => c, StringComparer.Ordinal))
        .Distinct()
        .Take(Most);

    /// <summary>How many troubled machines come with this complaint: the priors of its causes times how often they give it.</summary>
    private static double HowUsual(DiagnosticModel model, string complaint) => model.Findings[model.FindingAt(complaint)].Links
        .Where(l => l.Fault != KnowledgeBase.SomethingElse)
        .Sum(l => model.Faults[model.FaultAt(l.Fault)].Prior * l.Net[1]);
}
