using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Turns;

/// <summary>Takes a complaint that is known without listening for it.</summary>
internal static class Revealing
{
    public static void Take(TurnDraft draft, string complaint)
    {
        if (!draft.Knowledge.Complaints.TryGetValue(complaint, out var rule))
        {
            // The rules have changed since it was offered: the member may still tell it in their own words.
            if (draft.Case.Open.Kind == AskKind.None) Advancing.AskTrouble(draft);
            else Presenting.Again(draft);
            return;
        }

        draft.OpenWith(rule.Called);
        if (draft.View.Complaints.Contains(complaint) || draft.Case.Open.Kind == AskKind.AllSafe)
        {
            Presenting.Again(draft);
            return;
        }

        draft.Add(EntryKind.Complaint, complaint);
        Advancing.Next(draft, HelpCards.Heard(draft.View, [complaint]));
    }
}
