using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Turns;

/// <summary>The card of the open question.</summary>
internal static class Presenting
{
    /// <summary>The card that the open question is shown with; null when none is open.</summary>
    public static Card? Card(TurnDraft draft)
    {
        var (view, open) = (draft.View, draft.Case.Open);
        if (Outdated.Is(draft)) return HelpCards.NotAskedAnyMore(open);
        return open.Kind switch
        {
            AskKind.Trouble => QuestionCards.Trouble("What does the bike do?", "Tell me in your own words what it does, and what you were doing when it did."),
            AskKind.WhichComplaint => QuestionCards.WhichComplaint(view, open, Complaints.ToOffer(view, open.Subject)),
            AskKind.Either => QuestionCards.Either(view, TellingApart.Rule(draft, open.Subject)!, open),
            AskKind.Fact => QuestionCards.Fact(view, open),
            AskKind.Check => QuestionCards.Check(view, open),
            AskKind.Ready when draft.Case.Phase == CasePhase.Resting => QuestionCards.Rest(view, open),
            AskKind.Ready => QuestionCards.Ready(view, open),
            AskKind.Repair => RepairCards.Cause(view, open),
            AskKind.RepairStep => RepairCards.Step(view, open),
            AskKind.DidItHold => RepairCards.Prove(view, open),
            AskKind.WhichAnswer => QuestionCards.WhichAnswer(view, open),
            AskKind.AllSafe => ClosingCards.Emergency(draft.Knowledge.Emergencies[open.Subject], open),
            AskKind.None when draft.Case.Phase == CasePhase.Solved => HelpCards.StillHolds(open),
            _ => null,
        };
    }

    /// <param name="lead">Something to say first, or null.</param>
    public static void Now(TurnDraft draft, string? lead = null)
    {
        if (Card(draft) is not { } card) return;
        draft.Say(lead is null ? card : card with { Blocks = card.Blocks.Insert(0, new TextBlock(lead)) });
    }

    /// <summary>Puts the open question once more, with its options as they were; what was said with it the first time may be left out, but never in an emergency.</summary>
    public static void Again(TurnDraft draft)
    {
        if (Card(draft) is { } card) draft.Say(draft.Case.Open.Kind is AskKind.AllSafe ? card : card with { Repeated = true });
    }

    /// <summary>The options of that card; where the card also tells what is believed, without working that out.</summary>
    public static ImmutableArray<CardOption> Options(TurnDraft draft) => draft.Case.Open.Kind switch
    {
        _ when Outdated.Is(draft) => Card(draft)!.Options,
        AskKind.Fact => QuestionCards.FactOptions(draft.View, draft.Case.Open),
        AskKind.Check => QuestionCards.CheckOptions(draft.View, draft.Case.Open),
        AskKind.Repair => RepairCards.CauseOptions(draft.View, draft.Case.Open),
        _ => Card(draft)?.Options ?? [],
    };

    public static bool Offers(TurnDraft draft, OptionId option) => Options(draft).Any(o => o.Id == option.ToString());
}
