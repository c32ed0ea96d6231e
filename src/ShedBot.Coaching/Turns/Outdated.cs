using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Turns;

/// <summary>An open case whose rules changed under it: it goes on by the new ones, and says so.</summary>
internal static class Outdated
{
    /// <summary>Whether the rules no longer know what is asked.</summary>
    public static bool Is(TurnDraft draft)
    {
        var (open, rules) = (draft.Case.Open, draft.Knowledge);
        return open.Kind switch
        {
            AskKind.Check => !rules.Checks.ContainsKey(open.Subject),
            AskKind.Fact => !rules.Facts.ContainsKey(open.Subject),
            AskKind.Repair or AskKind.DidItHold => !rules.Repairs.ContainsKey(open.Subject),
            AskKind.RepairStep => !rules.Repairs.TryGetValue(open.Subject, out var repair) || open.Position >= repair.Steps.Length,
            AskKind.Either => TellingApart.Rule(draft, open.Subject) is null,
            AskKind.AllSafe => !rules.Emergencies.ContainsKey(open.Subject),
            _ => false,
        };
    }

    /// <summary>Whether the rules are others than at the turn before.</summary>
    public static bool RulesChanged(Case before, string rules) => before is { Turn: > 0, IsClosed: false } && before.KnowledgeVersion != rules;
}
