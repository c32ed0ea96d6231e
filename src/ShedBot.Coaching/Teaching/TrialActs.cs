using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>Tries a proposal beside the rules as they stand: made ready, tried, and kept. A trial can take a minute, so nobody waits behind it.</summary>
internal static class TrialActs
{
    private const int MostCases = 20_000;

    /// <returns>What is to be tried, or why not.</returns>
    public static async Task<(TrialWork? Work, TeachAnswer? Refused)> PrepareAsync(TeachAct act, TryOut request)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return (null, TeachAct.Gone);
        if (!proposal.IsOpen) return (null, TeachAnswer.No("state", ProposalCards.Standing(proposal)));
        proposal = Anew(act, proposal);
        if (ProposalActs.Unfit(act, proposal) is { } unfit) return (null, unfit);
        if (await LearnActs.StaleAsync(act, proposal) is { } stale) return (null, stale);
        var changed = Checked.Of(act.Rules, proposal, act.SheetOf(proposal)).Knowledge!;
        var weaker = LayerSafety.Check(act.Rules.Base.Knowledge!, changed);
        var cases = weaker.IsEmpty ? await act.Store.ClosedCasesAsync(act.Club, MostCases, act.Ct) : [];
        return (new TrialWork(ProposalCards.Mark(proposal), act.Rules, changed, cases, [.. weaker.Select(w => w.ToString())]), null);
    }

    /// <summary>Keeps a trial with the proposal, if it is still of that.</summary>
    public static async Task<TeachAnswer> KeepAsync(TeachAct act, TryOut request, TrialWork work, TriedOut tried, ITrials trials)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (!proposal.IsOpen) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        proposal = Anew(act, proposal);
        var trial = new ProposalTrial(work.Mark, work.Under.Edition, work.Under.BaseVersion, tried.Report, tried.Lost.IsEmpty, act.At);
        if (!ProposalCards.IsOf(trial, act, proposal))
        {
            const string Moved = "It or the rules were changed while it was being tried. Try it once more.";
            return new TeachAnswer(ProposalCards.Of(act, proposal, lead: Moved), new Refusal("stale", Moved), proposal);
        }

        var after = proposal with { Trial = trial, Version = proposal.Version + 1 };
        await act.SaveAsync([act.Audit(AuditAct.Tried, after.Id, tried.Lost.IsEmpty ? $"tried: {after.Title}" : $"tried: {after.Title}. Not safe: {tried.Lost[0]}")], after);
        ImmutableArray<CardBlock> shown =
        [
            .. tried.Report.Length == 0 ? [] : trials.Show(tried.Report, work.Under.Knowledge, work.Changed),
            .. Say.List("It cannot be published, because it would make the coach less safe", tried.Lost),
        ];
        return new TeachAnswer(ProposalCards.Of(act, after, shown, justTried: true), tried.Lost.IsEmpty ? null : new Refusal("unsafe", Say.Sentence(tried.Lost[0])), after);
    }

    /// <summary>The rules may have moved on since the sheet was filled in: ids, and what stood before, are worked out anew.</summary>
    private static Proposal Anew(TeachAct act, Proposal proposal) => act.SheetOf(proposal) is { CanHandIn: true } sheet ? SheetActs.Composed(proposal, sheet) : proposal;
}

/// <summary>Something to be tried.</summary>
/// <param name="Mark">A short name of exactly the changes.</param>
/// <param name="Under">The rules as they stand.</param>
/// <param name="Changed">The rules with the changes.</param>
/// <param name="Weaker">Where the rules themselves show that they would be less safe: then there is nothing to try.</param>
internal sealed record TrialWork(string Mark, RulesNow Under, KnowledgeBase Changed, ImmutableArray<ClosedCase> Cases, ImmutableArray<string> Weaker);
