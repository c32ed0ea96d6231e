using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What ShedBot keeps of its own acts on a club's rules: nobody's name stands by them, and each tells of itself in the log.</summary>
internal static class RoundActs
{
    public const string Name = "ShedBot";

    private const string AllLeftOut = "put away, because all of its numbers were left out";

    /// <summary>ShedBot itself, as somebody who acts.</summary>
    public static Teacher Itself(Clubs.ClubId club) => new(club, default, Name, TeachingRights.All);

    /// <summary>ShedBot's own open proposal; null when there is none.</summary>
    public static async Task<Proposal?> OpenAsync(TeachAct act) =>
        (await act.Store.ProposalsAsync(act.Club, ProposalState.Proposed, 100, act.Ct)).FirstOrDefault(p => p.By == default && CountedNumbers.Read(p) is not null);

    public static Task NoteAsync(TeachAct act, LearningBook book) => SaveAsync(act, book.Next(), []);

    public static async Task<Proposal> ProposeAsync(TeachAct act, LearningBook book, Proposal? open, CountWork work, CountedNumbers counted, ProposalTrial? trial)
    {
        var left = open is null ? [] : CountedNumbers.Read(open)!.Out.Intersect(counted.Numbers.Select(n => n.Key));
        var begun = open ?? Proposal.New(await act.NextIdAsync('P', async i => await act.Store.FindProposalAsync(act.Club, i, act.Ct) is not null), act.Teacher, "", act.At);
        var proposal = LearnActs.With(begun, counted with { Out = left }, work.Now, act.At) with { State = ProposalState.Proposed };
        // A trial is of the numbers without any left out.
        if (trial is not null && left.IsEmpty) proposal = proposal with { Trial = trial with { Changes = ProposalCards.Mark(proposal) } };
        await SaveAsync(act, book.Next(), [Line(act, proposal.Id, $"{(open is null ? "put up" : "counted anew")}: {proposal.Title}. {counted.Why}".TrimEnd())], proposal);
        return proposal;
    }

    /// <param name="allOut">All that the cases say was left out of it; else they say nothing of it any more.</param>
    public static Task WithdrawAsync(TeachAct act, LearningBook book, Proposal open, bool allOut) => SaveAsync(
        act, book.Next(), [Line(act, open.Id, allOut ? AllLeftOut : $"put away, because the cases do not say so any more: {open.Title}")], Away(act, open));

    /// <summary>Puts ShedBot's own proposal away, because the last of its numbers was left out; it is left alone like one that was turned down.</summary>
    /// <param name="key">Of the number that was left out last.</param>
    public static async Task<Proposal> AllOutAsync(TeachAct act, Proposal proposal, string key)
    {
        var after = proposal with { State = ProposalState.Withdrawn };
        await act.SaveAsync(
            [
                act.Audit(AuditAct.Changed, proposal.Id, $"left out: {TargetWords.Called(act.Rules.Knowledge, key)}"),
                Line(act, proposal.Id, AllLeftOut),
            ],
            after,
            book: await HeldNumbers.QuietAsync(act));
        return after;
    }

    /// <param name="open">An open proposal, of which this takes the place; or null.</param>
    public static async Task<int> PublishAsync(TeachAct act, LearningBook book, Proposal? open, CountedNumbers counted)
    {
        var numbers = counted.Numbers.Length == 1 ? "one number" : string.Create(CultureInfo.InvariantCulture, $"{counted.Numbers.Length} numbers");
        var edition = Edition(act, counted.Counted, $"Learnt by itself: {numbers}");
        await SaveAsync(
            act, book.Next(), [Line(act, TeachPress.Text(edition.Number), $"learnt by itself, as the club has chosen: {string.Join(' ', MoveCards.Short(act.Rules, counted))}")],
            open is null ? null : Away(act, open), edition);
        return edition.Number;
    }

    /// <returns>The edition; null when it comes to the same numbers as there are.</returns>
    public static async Task<int?> AnewAsync(TeachAct act, LearningBook book, Learnt learnt)
    {
        // What is open was counted with what is gone, so the cases are looked over at once; and what others published meanwhile still had the old numbers.
        var after = book.Next() with { Anew = "", LookedAt = null, Looked = "", Forgotten = act.Rules.Edition };
        if (learnt.Equals(act.Rules.LearntNumbers))
        {
            await SaveAsync(act, after, [Line(act, "", "counted anew what was learnt, because cases are gone: it comes to the same")]);
            return null;
        }

        var edition = Edition(act, learnt, "What was learnt, counted anew without cases that are gone");
        await SaveAsync(act, after, [Line(act, TeachPress.Text(edition.Number), "counted anew what was learnt, because cases are gone")], edition: edition);
        return edition.Number;
    }

    private static RulesEdition Edition(TeachAct act, Learnt learnt, string what) =>
        PublishActs.Edition(act, act.Rules.Layer, learnt.IsNothing ? "" : LearntText.Write(learnt), what, null) with { By = null, ByName = Name };

    private static Proposal Away(TeachAct act, Proposal open) => open with { State = ProposalState.Withdrawn, ChangedAt = act.At, Version = open.Version + 1 };

    private static AuditEntry Line(TeachAct act, string subject, string what) => act.Audit(AuditAct.Learnt, subject, what) with { Who = null, Name = "" };

    private static Task SaveAsync(TeachAct act, LearningBook book, ImmutableArray<AuditEntry> audit, Proposal? proposal = null, RulesEdition? edition = null) =>
        act.SaveAsync(audit, proposal, edition: edition, book: book);
}
