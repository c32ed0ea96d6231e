using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Turns;

/// <summary>What an answer to a check does.</summary>
internal static class Answering
{
    public static void Answer(TurnDraft draft, string check, string state, string? lead = null)
    {
        var rule = draft.Knowledge.Checks[check];
        var found = draft.Knowledge.Findings[rule.Tells].States.First(s => s.Id == state);
        draft.Strike(e => e.Kind == EntryKind.Volunteered && e.Subject == rule.Tells && e.Value != state);
        draft.Add(EntryKind.Answer, check, state);
        if (found.StopRiding is { } stop) Advancing.StopRiding(draft, QuestionCards.Label(rule, found), stop);
        else Advancing.Next(draft, lead);
    }
}
