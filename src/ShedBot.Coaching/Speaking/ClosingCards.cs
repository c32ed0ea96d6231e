using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Judging;

namespace ShedBot.Coaching.Speaking;

/// <summary>Ends that are not a mended bike: handed over, stopped, an emergency.</summary>
internal static class ClosingCards
{
    public static Card HandedOver(CaseView view, Case @case, HandOverReason? reason, CoachOptions options)
    {
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        blocks.Add(Say.Text(Because(reason, options)));
        blocks.AddRange(Summary(view, @case));
        blocks.Add(Say.Text("If the clutch will not let go, or anything is cracked or loose, leave the bike standing until it has been looked at."));
        return new Card($"Time for {options.Helper}: here is all we know", blocks.ToImmutable(), []);
    }

    public static Card StopRiding(CaseView view, Case @case, string? found, string stopText, CoachOptions options) => new(
        "Stop here: do not ride this bike",
        [
            .. found is null ? Array.Empty<CardBlock>() : [Say.Text($"You found: {found}.")],
            Say.Text(stopText),
            .. Summary(view, @case),
            Say.Text($"Show this to {options.Helper} or a licensed workshop. When it is put right, tell me and we start afresh."),
        ],
        []);

    public static Card Emergency(EmergencyRule rule, Ask open) => new(
        Say.Capital(rule.Called),
        [Say.Caution(rule.Caution), .. Say.Steps("Now", rule.DoNow)],
        rule.EndsCoaching ? [] : [Say.Option(open, OptionId.Safe, "Everybody is safe, go on"), Say.Help(open, OptionId.Leave, "Leave it for now")]);

    public static Card Left() => new(
        "Left as it is",
        [Say.Text("I have put the case away. Tell me about a trouble whenever you like. Until it is sorted, ride only what stops, lets go and holds as it should.")],
        []);

    /// <summary>What was said, checked, tried, what is likely, what is left.</summary>
    public static IEnumerable<CardBlock> Summary(CaseView view, Case @case)
    {
        if (@case.OpeningWords.Length > 0) yield return Say.Text($"In the rider's words: \"{@case.OpeningWords}\"");
        foreach (var block in Listed("The trouble", EntryKind.Complaint, EntryKind.Denied)) yield return block;
        foreach (var block in Listed("Told and checked", EntryKind.Either, EntryKind.Volunteered, EntryKind.Fact, EntryKind.Answer)) yield return block;
        foreach (var block in Listed("Not known", EntryKind.NotSure, EntryKind.Cannot, EntryKind.FactUnknown)) yield return block;
        foreach (var block in Listed("Tried", EntryKind.RepairFailed, EntryKind.RepairBetter, EntryKind.RepairRefused, EntryKind.CameBack))
            yield return block;
        if (!view.Complaints.Any()) yield break;
        yield return Say.Text("What I think, as far as it goes:");
        yield return Beliefs.Bars(view, 4);

        IEnumerable<CardBlock> Listed(string heading, params EntryKind[] kinds) =>
            Say.List(heading, view.Standing.Where(e => kinds.Contains(e.Kind) && e is not { Kind: EntryKind.Either, Value: null }).Select(e => Say.Capital(Told.Line(view, e))).Distinct());
    }

    private static string Because(HandOverReason? reason, CoachOptions options) => reason switch
    {
        HandOverReason.SomethingElse => "What you tell me fits none of the causes I know well enough. Better a pair of eyes than my guessing.",
        HandOverReason.HelpIsCheapest => $"From here on it is quicker, and surer, to let {options.Helper} have a look than to go on with what I could ask you.",
        HandOverReason.NoStepLeft => "What is left to check or do needs a look, a tool or a hand that you do not have just now.",
        HandOverReason.Contradiction => "Some of the answers do not fit together, also after asking again. That is nobody's fault; it wants a look.",
        HandOverReason.NoProgress => "I have asked a lot and am not getting nearer. That is my limit, not yours.",
        HandOverReason.SameRepairFailedTwice => "The same repair has now failed twice, so either it is not that, or it wants a practised hand.",
        null => "As you wish.",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };
}
