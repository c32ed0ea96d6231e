using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>Phrases that come or go, read aloud by what they mean.</summary>
internal static class PhraseReading
{
    /// <returns>Null for a list of something else, or one whose rule is not there.</returns>
    public static string? Of(MendList mend, KnowledgeBase now)
    {
        if (mend.Path.Parts is not [.., "riders say" or "riders ask"] || Means(mend, now) is not { } means) return null;
        return mend.Add is { } add ? $"A rider who says \"{add}\" is taken to mean: {means}." : $"A rider who says \"{mend.Drop}\" is no longer taken to mean: {means}.";
    }

    private static string? Means(MendList mend, KnowledgeBase now) => (mend.Key.Kind, mend.Path.Parts) switch
    {
        (RuleKind.Complaint, _) when now.Complaints.TryGetValue(mend.Key.Id, out var complaint) => complaint.Called,
        (RuleKind.Finding, [_, var state, _]) when now.Findings.TryGetValue(mend.Key.Id, out var finding) && finding.States.FirstOrDefault(s => s.Id == state) is { } said => $"\"{said.Says}\" ({finding.Means})",
        (RuleKind.Fact, [_, var value, _]) when now.Facts.TryGetValue(mend.Key.Id, out var fact) && fact.Values.FirstOrDefault(v => v.Id == value) is { } told => $"\"{told.Says}\" ({fact.Called})",
        (RuleKind.HowTo, _) when now.HowTos.TryGetValue(mend.Key.Id, out var howTo) => $"a question, \"{howTo.Called}\"",
        _ => null,
    };
}
