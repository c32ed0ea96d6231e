using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>Tries a proposal beside the rules as they stand.</summary>
internal static class TrialActs
{
    private const int MostCases = 20_000;

    public static async Task<TeachAnswer> TryAsync(TeachAct act, TryOut request, ITrials trials, IProgress<double>? progress)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (!proposal.IsOpen) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        // The rules may have moved on since the sheet was filled in: ids and what stood before are worked out anew.
        if (proposal.By == act.Teacher.Who && act.SheetOf(proposal) is { CanHandIn: true } sheet) proposal = SheetActs.Composed(act, proposal, sheet);
        if (ProposalActs.Unfit(act, proposal) is { } unfit) return unfit;
        var check = Checked.Of(act.Rules, proposal, act.SheetOf(proposal));
        var weaker = LayerSafety.Check(act.Rules.Base.Knowledge!, check.Knowledge!);
        var report = weaker.IsEmpty ? await trials.TryAsync(act.Rules.Knowledge, check.Knowledge!, await act.Store.ClosedCasesAsync(act.Club, MostCases, act.Ct), progress, act.Ct) : "";
        var after = proposal with
        {
            Trial = new ProposalTrial(ProposalCards.Mark(proposal), act.Rules.Edition, act.Rules.BaseVersion, report, weaker.IsEmpty, act.At),
            Version = proposal.Version + 1,
        };
        await act.SaveAsync([act.Audit(AuditAct.Tried, after.Id, weaker.IsEmpty ? $"tried: {after.Title}" : $"tried: {after.Title}. Not safe: {weaker[0].What}")], after);
        ImmutableArray<CardBlock> shown = weaker.IsEmpty
            ? trials.Show(report)
            : [new ListBlock("It cannot be published, because it would make the coach less safe", [.. weaker.Select(w => w.ToString())])];
        return new TeachAnswer(ProposalCards.Of(act, after, shown), weaker.IsEmpty ? null : new Refusal("unsafe", Say.Sentence(weaker[0].What)), after);
    }
}
