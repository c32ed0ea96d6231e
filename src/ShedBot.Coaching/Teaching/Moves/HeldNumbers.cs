using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What moderators have taken back or turned down is not put up again at once; and what is taken back to is counted anew where cases are gone since.</summary>
internal static class HeldNumbers
{
    /// <returns>The notes after ShedBot's proposal was turned down; null for any other.</returns>
    public static async Task<LearningBook?> OfRefusedAsync(TeachAct act, Proposal refused)
    {
        if (refused.By != default || CountedNumbers.Read(refused) is null) return null;
        return await QuietAsync(act);
    }

    /// <returns>The notes of a club that is to be left alone until clearly more cases are closed.</returns>
    public static async Task<LearningBook> QuietAsync(TeachAct act) => (await act.Store.LearningBookAsync(act.Club, act.Ct)).Quiet(await ClosedAsync(act)).Next();

    /// <summary>What taking back would do to numbers; nothing where it does nothing.</summary>
    public static async Task<IEnumerable<CardBlock>> TakenBackAsync(TeachAct act, RulesNow to)
    {
        var steps = Steps(act, to);
        if (steps.IsEmpty) return [];
        var anew = IsGone(await act.Store.LearningBookAsync(act.Club, act.Ct), to);
        return
        [
            .. Say.List("What was learnt, by number", steps.Select(s => $"{Say.Capital(TargetWords.Called(act.Rules.Knowledge, s.Key))}: from {Number(s, s.Before)} to {Number(s, s.After)}.")),
            .. anew ? new CardBlock[] { Say.Text("Cases that it was counted from are gone since with a member, so those numbers are counted anew first.") } : [],
        ];
    }

    /// <returns>What is learnt after taking back, and the notes after; null when they stay.</returns>
    public static async Task<(string Learnt, LearningBook? Book)> OfTakenBackAsync(TeachAct act, RulesNow to)
    {
        var book = await act.Store.LearningBookAsync(act.Club, act.Ct);
        var gone = IsGone(book, to);
        var steps = Steps(act, to);
        if (steps.IsEmpty && !gone && book.Anew.Length == 0) return (to.Learnt, null);
        // What goes is not put up again at once; who brings it back wants it.
        var after = steps.Any(s => s.Before is not null) ? book.Quiet(await ClosedAsync(act)) : book with { QuietUntil = 0 };
        return (gone ? "" : to.Learnt, after.Next() with { Anew = gone ? to.Learnt : "" });
    }

    /// <summary>Whether cases that this edition had counted are gone; while a count anew still waits, any may have.</summary>
    private static bool IsGone(LearningBook book, RulesNow to) => to.Learnt.Length > 0 && (to.Edition <= book.Forgotten || book.Anew.Length > 0);

    private static ImmutableArray<LearntStep> Steps(TeachAct act, RulesNow to) =>
        LearntSteps.Between(act.Rules.LearntNumbers, to.LearntNumbers, to.Knowledge, LearningLimits.Default);

    private static string Number(LearntStep step, double? number) => number is { } n ? TargetWords.Number(step.Key, n) : "the rules' own word";

    private static async Task<int> ClosedAsync(TeachAct act) => (await act.Store.ClosedMarkAsync(act.Club, act.At, act.Ct)).Count;
}
