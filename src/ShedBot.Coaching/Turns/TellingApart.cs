using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Turns;

/// <summary>Words that could mean a danger or a mere trouble: which one is asked before anything else, and never guessed.</summary>
internal static class TellingApart
{
    /// <summary>The question that has no answer yet; null when there is none.</summary>
    public static EitherRule? Unsettled(TurnDraft draft) =>
        draft.View.Standing.LastOrDefault(e => e.Kind == EntryKind.Either) is { Value: null } entry ? Rule(draft, entry.Subject) : null;

    public static EitherRule? Rule(TurnDraft draft, string id) => draft.Knowledge.Eithers.FirstOrDefault(e => e.Id == id);

    /// <summary>Whether the words are to be asked about: nothing is known yet that settles them, or they sound like one of the dangers that could be meant.</summary>
    public static bool IsWanted(TurnDraft draft, Understood understood) =>
        understood.Either is { } id && Rule(draft, id) is { } rule && draft.Case.Open.Kind is not AskKind.Either
        && (!draft.View.Complaints.Any() || IsOneOf(rule, understood.Emergency));

    /// <summary>Whether an emergency is only one of the things that the words could mean.</summary>
    public static bool IsOnlyPossible(TurnDraft draft, Understood understood) =>
        understood.Either is { } id && Rule(draft, id) is { } rule && IsOneOf(rule, understood.Emergency);

    /// <summary>"The brakes are alright, the engine keeps shoving" has brakes in it and does not mean them.</summary>
    public static bool IsSpokenAgainst(TurnDraft draft, OptionId option, Understood understood) =>
        option.AsEither is { } index && understood.SpokenAgainst.Contains(Rule(draft, draft.Case.Open.Subject)!.Answers[index].Means);

    /// <summary>Notes that it is not known what was meant; what was heard besides counts for nothing before it is.</summary>
    public static void Begin(TurnDraft draft, string id)
    {
        if (Unsettled(draft) is null) draft.Add(EntryKind.Either, id);
    }

    public static void Ask(TurnDraft draft, EitherRule rule, string? lead = null)
    {
        if (draft.Case.Phase != CasePhase.Opening) draft.Fire(CaseTrigger.AskMore);
        draft.Put(AskKind.Either, rule.Id);
        Presenting.Now(draft, lead);
    }

    /// <summary>After words that are none of the answers: "the left one". Asked three times in vain it stays unknown, and nobody goes round in circles.</summary>
    public static void AskAgain(TurnDraft draft)
    {
        var (rule, asked) = (Rule(draft, draft.Case.Open.Subject)!, draft.Case.Open.Position);
        switch (asked)
        {
            case 0:
                InOtherWords(draft, "I cannot tell yet which one you mean, and I will not guess. Put differently:");
                break;
            case 1:
                draft.Put(AskKind.Either, rule.Id, position: 2);
                draft.Say(HelpCards.CannotTell(rule));
                Presenting.Again(draft);
                break;
            default:
                Stop(draft, rule);
                break;
        }
    }

    public static void Take(TurnDraft draft, OptionId option)
    {
        var rule = Rule(draft, draft.Case.Open.Subject)!;
        if (option.AsEither is { } index) Settle(draft, rule, rule.Answers[index]);
        else if (option.Token == OptionId.Cannot) Wait(draft);
        else if (draft.Case.Open.Position == 0) InOtherWords(draft, "No shame in that. Once more, put differently:");
        else Stop(draft, rule);
    }

    private static void Settle(TurnDraft draft, EitherRule rule, EitherAnswer answer)
    {
        if (draft.Knowledge.Emergencies.ContainsKey(answer.Means))
        {
            StrikeGuesses(draft);
            draft.Add(EntryKind.Either, rule.Id, answer.Means);
            Advancing.Emergency(draft, answer.Means);
            return;
        }

        StrikeGuesses(draft, e => e.Kind == EntryKind.Complaint && e.Score < WordsHandler.ClearAsNews);
        draft.Add(EntryKind.Either, rule.Id, answer.Means);
        if (!draft.View.Complaints.Contains(answer.Means)) draft.Add(EntryKind.Complaint, answer.Means);
        Advancing.Next(draft, HelpCards.Heard(draft.View, draft.View.Complaints));
    }

    private static void InOtherWords(TurnDraft draft, string lead)
    {
        draft.Put(AskKind.Either, draft.Case.Open.Subject, position: 1);
        Presenting.Now(draft, lead);
    }

    private static void Wait(TurnDraft draft)
    {
        draft.Say(HelpCards.LookFirst());
        Presenting.Again(draft);
    }

    private static void Stop(TurnDraft draft, EitherRule rule)
    {
        StrikeGuesses(draft);
        Advancing.StopRiding(draft, null, rule.IfUnsure);
    }

    /// <summary>What was heard with the words was heard of the one trouble and may have been the other.</summary>
    private static void StrikeGuesses(TurnDraft draft, Func<CaseEntry, bool>? which = null)
    {
        var since = draft.View.Standing.Last(e => e.Kind == EntryKind.Either).Turn;
        draft.Strike(e => e.Turn >= since && e.Kind is EntryKind.Complaint or EntryKind.Volunteered && (which is null || which(e)));
    }

    private static bool IsOneOf(EitherRule rule, string? emergency) => emergency is not null && rule.Answers.Any(a => a.Means == emergency);
}
