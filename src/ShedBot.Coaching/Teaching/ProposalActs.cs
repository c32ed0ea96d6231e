using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching;

/// <summary>What happens to a proposal between writing and publishing: looked at, handed in, turned down, put away.</summary>
internal static class ProposalActs
{
    /// <summary>Of a reason.</summary>
    public const int MostReason = 500;

    public static async Task<TeachAnswer> ShowAsync(TeachAct act, ShowProposal request, ITrials trials)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        // Who publishes sees what its author saw.
        return new TeachAnswer(ProposalCards.Of(act, proposal, Tried(act, proposal, trials.Show)), null, proposal);
    }

    public static async Task<TeachAnswer> FiguresAsync(TeachAct act, ShowFigures request, ITrials trials)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        var figures = Tried(act, proposal, trials.Figures);
        return new TeachAnswer(new Card(
            "What the trial measured",
            figures.IsDefaultOrEmpty ? [Say.Text("There are no figures: it was not tried as it is now.")] : figures,
            [new TeachPress(TeachVerb.Look, proposal.Id).Option("back to the proposal", OptionRole.Help)]));
    }

    /// <returns>The trial of the proposal as it is, against the rules as they are; default when there is none.</returns>
    private static ImmutableArray<CardBlock> Tried(TeachAct act, Proposal proposal, Func<string, KnowledgeBase, KnowledgeBase, ImmutableArray<CardBlock>> show) =>
        proposal is { IsOpen: true, Trial: { Report.Length: > 0 } tried } && ProposalCards.IsOf(tried, act, proposal)
        && Checked.Of(act.Rules, proposal, act.SheetOf(proposal)).Knowledge is { } changed
            ? show(tried.Report, act.Rules.Knowledge, changed)
            : default;

    public static TeachAnswer Look(TeachAct act, Proposal proposal) => new(ProposalCards.Of(act, proposal), null, proposal);

    public static async Task<TeachAnswer> HandInAsync(TeachAct act, HandIn request)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal || proposal.By != act.Teacher.Who) return TeachAct.Gone;
        if (proposal.State != ProposalState.Draft) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        if (Unfit(act, proposal) is { } unfit) return unfit;
        var after = proposal with { State = ProposalState.Proposed, ChangedAt = act.At, Version = proposal.Version + 1 };
        await act.SaveAsync([act.Audit(AuditAct.Proposed, after.Id, $"handed in: {after.Title}")], after);
        return Look(act, after);
    }

    public static async Task<TeachAnswer> RefuseAsync(TeachAct act, Refuse request)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (proposal.State != ProposalState.Proposed) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        if (Reason(request.Reason) is not { } reason) return TeachAnswer.No("reason", "Say why in a sentence, so that its author can mend it.");
        var after = proposal with { State = ProposalState.Refused, Reason = reason, ChangedAt = act.At, Version = proposal.Version + 1 };
        ImmutableArray<OutboxMessage> say = proposal.By == act.Teacher.Who || proposal.By == default
            ? []
            : [act.Word(proposal.By, $"{after.Id}/refused", new Card("Your proposal was not taken", [Say.Text($"{after.Title}. The reason: {reason}"), Say.Text("What you wrote is kept; write it anew with that in mind, if you like.")], []))];
        await act.SaveAsync([act.Audit(AuditAct.Refused, after.Id, $"refused: {after.Title}. The reason: {reason}")], after, await FreedAsync(act, proposal), say: say, book: await HeldNumbers.OfRefusedAsync(act, proposal));
        return Look(act, after);
    }

    public static async Task<TeachAnswer> WithdrawAsync(TeachAct act, Withdraw request)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal || proposal.By != act.Teacher.Who) return TeachAct.Gone;
        if (!proposal.IsOpen) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        var after = proposal with { State = ProposalState.Withdrawn, ChangedAt = act.At, Version = proposal.Version + 1 };
        await act.SaveAsync([act.Audit(AuditAct.Withdrew, after.Id, $"put away: {ProposalCards.TitleOf(after)}")], after, await FreedAsync(act, proposal));
        return new TeachAnswer(new Card("Put away", [Say.Text($"{ProposalCards.TitleOf(after)}. Nothing of it changes the rules.")], [new TeachPress(TeachVerb.Rules).Option("the rules", OptionRole.Help)]), null, after);
    }

    /// <returns>Why a proposal cannot go on as it is; null when it can.</returns>
    public static TeachAnswer? Unfit(TeachAct act, Proposal proposal)
    {
        if (act.SheetOf(proposal) is { CanHandIn: false } sheet)
        {
            var next = sheet.Wrong.Concat(sheet.Missing).First();
            return new TeachAnswer(SheetCards.Ask(proposal.Id, sheet, next, "This is still missing."), new Refusal("missing", "Something is still missing."), proposal, sheet, next);
        }

        if (proposal is { Changes.Length: 0, Learnt.Length: 0 }) return TeachAnswer.No("nothing", "That changes nothing yet.");
        return Checked.Of(act.Rules, proposal, act.SheetOf(proposal)).Knowledge is null
            ? new TeachAnswer(ProposalCards.Of(act, proposal), new Refusal("problems", "Something does not fit yet."), proposal)
            : null;
    }

    /// <returns>The reason made safe, or null when it says nothing.</returns>
    public static string? Reason(string words) => CleanText.OneLine(words, MostReason) is { Length: > 0 } reason && reason.Any(char.IsLetterOrDigit) ? reason : null;

    /// <returns>The tip that a proposal was made of, for another to take up; null when there is none.</returns>
    private static async Task<Tip?> FreedAsync(TeachAct act, Proposal proposal) =>
        proposal.Tip is { } id && await act.Store.FindTipAsync(act.Club, id, act.Ct) is { State: TipState.Taken } tip && tip.Proposal == proposal.Id
            ? tip with { State = TipState.Waiting, Proposal = null, Version = tip.Version + 1 }
            : null;
}
