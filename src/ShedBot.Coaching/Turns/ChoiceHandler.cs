using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;
using ShedBot.Reasoning.Judging;

namespace ShedBot.Coaching.Turns;

/// <summary>What picking an option does. The option is known to be one of the open question's.</summary>
internal sealed class ChoiceHandler(TurnDraft draft)
{
    public void Handle(OptionId option)
    {
        if (HandleHelp(option)) return;
        if (Outdated.Is(draft))
        {
            GoOn();
            return;
        }

        switch (draft.Case.Open.Kind)
        {
            case AskKind.WhichComplaint: Complaint(option); break;
            case AskKind.Either: TellingApart.Take(draft, option); break;
            case AskKind.Fact: Fact(option); break;
            case AskKind.Check: Check(option); break;
            case AskKind.Ready: Ready(option); break;
            case AskKind.Repair or AskKind.RepairStep: Repair(option); break;
            case AskKind.DidItHold: Proof(option); break;
            case AskKind.WhichAnswer: ChangeAnswer(option); break;
            case AskKind.AllSafe: GoOn(); break;
            case AskKind.None when option.Token == OptionId.CameBack: CameBack(); break;
            default: Presenting.Again(draft); break;
        }
    }

    private bool HandleHelp(OptionId option)
    {
        switch (option.Token)
        {
            case OptionId.Why:
                draft.Say(HelpCards.Why(draft.View, draft.Case.Open));
                Presenting.Again(draft);
                return true;
            case OptionId.ShowMe:
                draft.Say(HelpCards.ShowMe(draft.View, draft.Case.Open));
                Presenting.Again(draft);
                return true;
            case OptionId.Helper:
                Advancing.HandOver(draft, null);
                return true;
            case OptionId.Leave:
                Advancing.Leave(draft);
                return true;
            case OptionId.Change when draft.Case.Standing.Any(e => e.Kind is EntryKind.Answer or EntryKind.Fact):
                draft.Put(AskKind.WhichAnswer);
                Presenting.Now(draft);
                return true;
            case OptionId.Change:
                draft.Say(HelpCards.NothingToTakeBack());
                Presenting.Again(draft);
                return true;
            case OptionId.Back:
                Back();
                return true;
            default:
                return false;
        }
    }

    private void Back()
    {
        var open = draft.Case.Open;
        if (open.Kind == AskKind.RepairStep)
        {
            if (open.Position > 0) draft.Put(AskKind.RepairStep, open.Subject, open.Position - 1);
            else draft.Put(AskKind.Repair, open.Subject);
            Presenting.Now(draft);
        }
        else if (open.Kind == AskKind.DidItHold)
        {
            draft.Fire(CaseTrigger.ShowRepair);
            draft.Put(AskKind.Repair, open.Subject);
            Presenting.Now(draft);
        }
        else if (open.Kind == AskKind.WhichAnswer)
        {
            Advancing.Next(draft);
        }
        else if (draft.StrikeLast() is { } takenBack)
        {
            Advancing.Next(draft, $"Taken back: {Told.Line(draft.View, takenBack)}");
        }
        else
        {
            draft.Say(HelpCards.NothingToTakeBack());
            Presenting.Again(draft);
        }
    }

    private void Complaint(OptionId option)
    {
        if (option.AsComplaint is { } complaint)
        {
            draft.Strike(e => e.Kind == EntryKind.Denied && e.Subject == complaint);
            draft.Add(EntryKind.Complaint, complaint);
            Advancing.Next(draft);
        }
        else if (draft.Case.Open.Position > 0)
        {
            Advancing.HandOver(draft, HandOverReason.SomethingElse);
        }
        else
        {
            draft.Put(AskKind.Trouble, position: 1);
            draft.Say(HelpCards.InOtherWords());
        }
    }

    private void Fact(OptionId option)
    {
        var fact = draft.Case.Open.Subject;
        if (option.AsState is { } value)
        {
            draft.Add(EntryKind.Fact, fact, value);
            draft.Learn(fact, value, "told");
        }
        else
        {
            draft.Add(EntryKind.FactUnknown, fact);
        }

        Advancing.Next(draft);
    }

    private void Check(OptionId option)
    {
        var (check, position) = (draft.Case.Open.Subject, draft.Case.Open.Position);
        var rule = draft.Knowledge.Checks[check];
        if (option.AsState is { } state)
        {
            Answering.Answer(draft, check, state);
        }
        else if (option.Token == OptionId.NotSure && position == 0 && rule.OtherWords is not null)
        {
            draft.Put(AskKind.Check, check, position: 1);
            Presenting.Now(draft, "No shame in that. Once more, put differently:");
        }
        else
        {
            draft.Add(
                option.Token == OptionId.Cannot ? EntryKind.Cannot : EntryKind.NotSure,
                check,
                option.Token == OptionId.Cannot ? rule.Cover : null);
            Advancing.Next(draft, option.Token == OptionId.Cannot ? "Then we go round it." : "Fine, then we find it another way.");
        }
    }

    private void Ready(OptionId option)
    {
        if (option.AsDanger is { } emergency)
        {
            Advancing.Emergency(draft, emergency);
            return;
        }

        draft.Add(option.Token == OptionId.Ready ? EntryKind.Ready : EntryKind.NotReady);
        Advancing.Next(draft, option.Token == OptionId.Ready ? null : Advancing.FromMemory);
    }

    private void Repair(OptionId option)
    {
        var (repair, position) = (draft.Case.Open.Subject, draft.Case.Open.Position);
        switch (option.Token)
        {
            case OptionId.Done:
                draft.Fire(CaseTrigger.Prove);
                draft.Put(AskKind.DidItHold, repair);
                Presenting.Now(draft);
                break;
            case OptionId.StepByStep:
                draft.Put(AskKind.RepairStep, repair, draft.Case.Open.Kind == AskKind.RepairStep ? position + 1 : 0);
                Presenting.Now(draft);
                break;
            default:
                draft.Add(EntryKind.RepairRefused, repair);
                Advancing.Next(draft, "Then not that one. Leave nothing half done: put back what is loose before the bike moves.");
                break;
        }
    }

    private void Proof(OptionId option)
    {
        var repair = draft.Case.Open.Subject;
        if (option.Token == OptionId.Held)
        {
            Advancing.Solve(draft, repair);
            return;
        }

        var better = option.Token == OptionId.Better;
        draft.Add(better ? EntryKind.RepairBetter : EntryKind.RepairFailed, repair);
        Advancing.Next(draft, better
            ? "Better is something: so that was part of it. Let us find the rest."
            : "Then it was not that, or not only that. It was not for nothing: it is ruled out now.");
    }

    private void ChangeAnswer(OptionId option)
    {
        var entry = draft.Case.Standing.LastOrDefault(e => e.Turn == option.AsAnswer && e.Kind is EntryKind.Answer or EntryKind.Fact);
        if (entry is null)
        {
            Advancing.Next(draft);
            return;
        }

        draft.Strike(e => e == entry);
        draft.Fire(CaseTrigger.AskMore);
        draft.Put(entry.Kind == EntryKind.Fact ? AskKind.Fact : AskKind.Check, entry.Subject);
        Presenting.Now(draft);
    }

    private void GoOn()
    {
        if (draft.View.Complaints.Any()) Advancing.Next(draft);
        else Advancing.AskTrouble(draft);
    }

    private void CameBack()
    {
        draft.Add(EntryKind.CameBack, draft.Case.Open.Subject);
        draft.Fire(CaseTrigger.ComeBack);
        Advancing.Next(draft, "Annoying, and useful: what held for a while was not the root of it, or something wears it out again.");
    }
}
