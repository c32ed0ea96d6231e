using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;

namespace ShedBot.Coaching.Speaking;

/// <summary>A line of a case in words: what the member said or did.</summary>
internal static class Told
{
    public static string Line(CaseView view, CaseEntry entry)
    {
        var knowledge = view.Knowledge;
        return entry.Kind switch
        {
            EntryKind.Complaint when knowledge.Complaints.TryGetValue(entry.Subject, out var complaint) => complaint.Called,
            EntryKind.Denied when knowledge.Complaints.TryGetValue(entry.Subject, out var complaint) => $"not this: {complaint.Called}",
            EntryKind.Volunteered when knowledge.Findings.TryGetValue(entry.Subject, out var finding) =>
                $"{finding.Means}: {StateSays(view, entry.Subject, entry.Value)}",
            EntryKind.Answer when knowledge.Checks.TryGetValue(entry.Subject, out var check) =>
                $"{knowledge.Findings[check.Tells].Means}: {CheckSays(view, entry)}",
            EntryKind.Fact when knowledge.Facts.TryGetValue(entry.Subject, out var fact) =>
                $"{fact.Called}: {fact.Values.FirstOrDefault(v => v.Id == entry.Value)?.Says ?? entry.Value}",
            EntryKind.Either when knowledge.Eithers.FirstOrDefault(e => e.Id == entry.Subject) is { } either =>
                $"{either.Called}: {either.Answers.FirstOrDefault(a => a.Means == entry.Value)?.Says ?? "not known yet"}",
            EntryKind.NotSure when knowledge.Checks.TryGetValue(entry.Subject, out var check) => knowledge.Findings[check.Tells].Means,
            EntryKind.Cannot when knowledge.Checks.TryGetValue(entry.Subject, out var check) => knowledge.Findings[check.Tells].Means,
            EntryKind.FactUnknown when knowledge.Facts.TryGetValue(entry.Subject, out var fact) => fact.Called,
            EntryKind.RepairFailed or EntryKind.CameBack when knowledge.Repairs.TryGetValue(entry.Subject, out var repair) =>
                $"{repair.Does}: {(entry.Kind == EntryKind.CameBack ? "held for a while, then the trouble came back" : "no change")}",
            EntryKind.RepairBetter when knowledge.Repairs.TryGetValue(entry.Subject, out var repair) => $"{repair.Does}: better, not gone",
            EntryKind.RepairRefused when knowledge.Repairs.TryGetValue(entry.Subject, out var repair) => $"{repair.Does}: could not be done",
            _ => entry.Subject,
        };
    }

    private static string CheckSays(CaseView view, CaseEntry entry)
    {
        var check = view.Knowledge.Checks[entry.Subject];
        return check.Answers.GetValueOrDefault(entry.Value ?? "") ?? StateSays(view, check.Tells, entry.Value);
    }

    private static string StateSays(CaseView view, string finding, string? state) =>
        view.Knowledge.Findings[finding].States.FirstOrDefault(s => s.Id == state)?.Says ?? state ?? "";
}
