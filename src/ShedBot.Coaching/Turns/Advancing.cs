using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Thinking;
using ShedBot.Reasoning.Judging;

namespace ShedBot.Coaching.Turns;

/// <summary>Carries out what was decided to come next.</summary>
internal static class Advancing
{
    /// <summary>A cause that was found with this chance and is not what the repair mended is worth mending too.</summary>
    private const double AlsoFound = 0.6;

    /// <summary>Said to who is not at the bike; where nothing can be answered from memory it would be wrong.</summary>
    public const string FromMemory = "Then first what you can answer from memory.";

    public static void Next(TurnDraft draft, string? lead = null)
    {
        if (TellingApart.Unsettled(draft) is { } either)
        {
            TellingApart.Ask(draft, either, lead);
            return;
        }

        switch (new NextMove(draft.View, draft.Options).Choose())
        {
            case AskFact fact:
                Put(draft, CaseTrigger.AskMore, AskKind.Fact, fact.Fact, lead);
                break;
            case AskCheck check:
                Put(draft, CaseTrigger.AskMore, AskKind.Check, check.Check, lead);
                break;
            case AskAgain again:
                AskOnceMore(draft, again.Check);
                break;
            case AskReady:
                Put(draft, CaseTrigger.AskMore, AskKind.Ready, "", lead);
                break;
            case ShowRepair repair:
                draft.Add(EntryKind.RepairShown, repair.Repair);
                Put(draft, CaseTrigger.ShowRepair, AskKind.Repair, repair.Repair, lead);
                break;
            case Rest:
                Put(draft, CaseTrigger.Rest, AskKind.Ready, "", lead == FromMemory ? null : lead);
                break;
            case PassOn passOn:
                HandOver(draft, passOn.Reason);
                break;
        }
    }

    /// <summary>Asks for the trouble; drops nothing of what is known.</summary>
    public static void AskTrouble(TurnDraft draft)
    {
        if (TellingApart.Unsettled(draft) is { } either)
        {
            TellingApart.Ask(draft, either);
            return;
        }

        draft.Fire(CaseTrigger.AskTrouble);
        draft.Put(AskKind.Trouble);
        Presenting.Now(draft);
    }

    public static void HandOver(TurnDraft draft, HandOverReason? reason)
    {
        draft.Fire(CaseTrigger.HandOver);
        draft.Put(AskKind.None);
        draft.Say(ClosingCards.HandedOver(draft.View, draft.Case, reason, draft.Options));
        draft.Close(null, []);
    }

    /// <param name="found">What was found; null when the trouble is that it is not known.</param>
    public static void StopRiding(TurnDraft draft, string? found, string stopText)
    {
        draft.Fire(CaseTrigger.Stop);
        draft.Put(AskKind.None);
        draft.Say(ClosingCards.StopRiding(draft.View, draft.Case, found, stopText, draft.Options));
        draft.Close(null, []);
    }

    public static void Emergency(TurnDraft draft, string emergency)
    {
        var rule = draft.Knowledge.Emergencies[emergency];
        if (rule.EndsCoaching) draft.Fire(CaseTrigger.Stop);
        var open = draft.Put(rule.EndsCoaching ? AskKind.None : AskKind.AllSafe, emergency);
        draft.Say(ClosingCards.Emergency(rule, open));
        if (rule.EndsCoaching) draft.Close(null, []);
    }

    public static void Leave(TurnDraft draft)
    {
        draft.Fire(CaseTrigger.Leave);
        draft.Put(AskKind.None);
        draft.Say(ClosingCards.Left());
        draft.Close(null, []);
    }

    public static void Solve(TurnDraft draft, string repair)
    {
        var rule = draft.Knowledge.Repairs[repair];
        var mended = RepairCards.Mended(draft.View, rule);
        var causes = mended.Where((m, i) => i == 0 || m.Chance >= AlsoFound).ToList();
        var also = Beliefs.Ranked(draft.View)
            .Where(f => f.Chance >= AlsoFound && !rule.Mends.ContainsKey(f.Fault) && draft.Knowledge.Faults.ContainsKey(f.Fault))
            .Select(f => Beliefs.Is(draft.Knowledge, f.Fault))
            .ToList();
        ImmutableArray<OutcomeCause> known = [.. mended.Select(m => new OutcomeCause(m.Fault, m.Chance))];
        draft.Add(EntryKind.RepairHeld, repair);
        draft.LogWork(repair);
        draft.Fire(CaseTrigger.Hold);
        var open = draft.Put(AskKind.None, repair);
        draft.Say(RepairCards.Solved(draft.View, open, rule, causes, also));
        draft.Close(repair, known);
    }

    private static void AskOnceMore(TurnDraft draft, string check)
    {
        var before = draft.Case.Standing.Last(e => e.Kind == EntryKind.Answer && e.Subject == check);
        var lead = $"One answer does not fit the others: \"{Told.Line(draft.View, before)}\". Please look once more; an honest 'not sure' is fine too.";
        draft.Strike(e => e == before);
        draft.Add(EntryKind.AskedAgain, check);
        draft.Fire(CaseTrigger.AskMore);
        draft.Put(AskKind.Check, check, position: 1);
        Presenting.Now(draft, lead);
    }

    private static void Put(TurnDraft draft, CaseTrigger trigger, AskKind kind, string subject, string? lead)
    {
        draft.Fire(trigger);
        draft.Put(kind, subject);
        Presenting.Now(draft, lead);
    }
}
