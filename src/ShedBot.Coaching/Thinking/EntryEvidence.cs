using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Thinking;

/// <summary>What a line of a case says to the reasoning; null when it is no evidence, or the rules no longer know what it is about.</summary>
internal static class EntryEvidence
{
    /// <summary>How often a complaint that was named is not the one the rider means, at the least and the most.</summary>
    private const double LeastDoubt = 0.02, MostDoubt = 0.2;

    /// <summary>The most that something overheard in free words may weigh, as odds (theory of soft evidence: cap it, and confirm by a question).</summary>
    private const double MostOdds = 10;

    public static Evidence? Of(CaseEntry entry, KnowledgeBase knowledge) => entry.Kind switch
    {
        EntryKind.Complaint when knowledge.Complaints.ContainsKey(entry.Subject) =>
            new FindingTold(entry.Subject, Finding.Yes, Doubt(entry.Score, knowledge)),
        EntryKind.Denied when knowledge.Complaints.ContainsKey(entry.Subject) =>
            new FindingTold(entry.Subject, Finding.No, AnswerError.Even(MostDoubt / 2)),
        EntryKind.Volunteered => Hint(entry, knowledge),
        EntryKind.Answer when knowledge.Checks.TryGetValue(entry.Subject, out var check) && Knows(knowledge, check.Tells, entry.Value) =>
            new CheckAnswered(entry.Subject, entry.Value!),
        EntryKind.RepairFailed or EntryKind.CameBack when knowledge.Repairs.ContainsKey(entry.Subject) => new RepairFailed(entry.Subject),
        EntryKind.RepairBetter when knowledge.Repairs.ContainsKey(entry.Subject) => new RepairFailed(entry.Subject, Better: true),
        _ => null,
    };

    /// <summary>A rider who names the wrong complaint names some other one: a false 'yes' is shared between all the others.</summary>
    private static AnswerError Doubt(double score, KnowledgeBase knowledge)
    {
        var doubt = Math.Clamp((1 - score) / 2, LeastDoubt, MostDoubt);
        return new AnswerError(doubt / Math.Max(1, knowledge.Complaints.Count - 1), doubt);
    }

    private static FindingHinted? Hint(CaseEntry entry, KnowledgeBase knowledge)
    {
        if (!Knows(knowledge, entry.Subject, entry.Value)) return null;
        var score = Math.Clamp(entry.Score, 0.5, 0.99);
        var odds = Math.Min(score / (1 - score), MostOdds);
        return new FindingHinted(entry.Subject, [.. knowledge.Findings[entry.Subject].States.Select(s => s.Id == entry.Value ? odds : 1)]);
    }

    private static bool Knows(KnowledgeBase knowledge, string finding, string? state) =>
        knowledge.Findings.TryGetValue(finding, out var rule) && rule.States.Any(s => s.Id == state);
}
