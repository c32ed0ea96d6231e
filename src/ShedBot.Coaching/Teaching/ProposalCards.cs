using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Coaching.Teaching;

/// <summary>A proposal as it is looked at: what it changes, what does not fit, its trial, and what can be done with it.</summary>
internal static class ProposalCards
{
    private const int MostLines = 20;

    /// <param name="trial">What to show of its trial.</param>
    /// <param name="justTried">True where what it changes was read just before: then it is not read once more.</param>
    public static Card Of(TeachAct act, Proposal proposal, ImmutableArray<CardBlock> trial = default, string? lead = null, bool justTried = false)
    {
        var sheet = act.SheetOf(proposal);
        var check = proposal.IsOpen && (proposal.Changes.Length > 0 || proposal.Learnt.Length > 0) ? Checked.Of(act.Rules, proposal, sheet) : null;
        var reads = check?.Reads ?? (proposal.Changes.Length > 0 ? new RuleReading(act.Rules.Knowledge, null).Of(ChangesText.Read(proposal.Changes)) : []);
        var problems = check?.Problems ?? [];
        var fresh = proposal.Trial is { } tried && IsOf(tried, act, proposal);
        return new Card(
            TitleOf(proposal),
            [
                .. lead is null ? [] : new CardBlock[] { Say.Text(lead) },
                Say.Text(Standing(proposal)),
                .. justTried ? [] : Say.List("What it changes", Bounded(reads)),
                .. MoveCards.Blocks(act.Rules.Knowledge, proposal, justTried),
                .. Say.List("Does not fit yet", problems.Where(p => p.Stops).Select(p => p.Say)),
                .. Say.List("To look at", problems.Where(p => !p.Stops).Select(p => p.Say)),
                .. trial.IsDefault ? [] : trial,
                .. proposal is { IsOpen: true, Trial: not null } && !fresh ? new CardBlock[] { Say.Text("The rules have changed since it was tried. Try it once more.") } : [],
                .. proposal.IsOpen && check is null ? new CardBlock[] { Say.Text("It changes nothing yet.") } : [],
            ],
            [.. Options(act, proposal, check, fresh)]);
    }

    public static string TitleOf(Proposal proposal) => proposal.Title.Length > 0 ? proposal.Title
        : Writing.Sheets.Find(proposal.Sheet) is { } sheet ? $"{sheet.Title} (begun)" : "Rules from a file";

    /// <summary>Where it stands, in a sentence.</summary>
    public static string Standing(Proposal proposal) => proposal.State switch
    {
        ProposalState.Draft => $"A draft of {proposal.ByName}'s; nobody else sees it.",
        ProposalState.Proposed => $"Handed in by {TeachAct.DoerOf(proposal.ByName)} on {Day(proposal.ChangedAt)}; it waits for somebody who may publish.",
        ProposalState.Published => string.Create(CultureInfo.InvariantCulture, $"Published as edition {proposal.Edition}. Written by {TeachAct.DoerOf(proposal.ByName)}."),
        ProposalState.Refused => $"Refused: {proposal.Reason}",
        _ => $"Put away by {TeachAct.DoerOf(proposal.ByName)}.",
    };

    /// <summary>Whether a trial is of exactly these changes, against the rules as they stand.</summary>
    public static bool IsOf(ProposalTrial trial, TeachAct act, Proposal proposal) =>
        trial.Changes == Mark(proposal) && trial.Edition == act.Rules.Edition && trial.Base == act.Rules.BaseVersion;

    public static string Mark(Proposal proposal) => ChangesText.Mark(proposal.Changes + "\n" + proposal.Learnt);

    public static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<CardOption> Options(TeachAct act, Proposal proposal, Checked? check, bool fresh)
    {
        var (own, fits) = (proposal.By == act.Teacher.Who, check?.Knowledge is not null);
        if (!proposal.IsOpen) yield break;
        foreach (var problem in check?.Problems.Where(p => own && p.Question is not null).DistinctBy(p => p.Question).Take(5) ?? [])
            yield return new TeachPress(TeachVerb.GoOn, proposal.Id, problem.Question!).Option($"Mend: {Writing.Sheets.Find(proposal.Sheet)?.Find(problem.Question!)?.Ask ?? problem.Question}");
        if (fits && !fresh) yield return new TeachPress(TeachVerb.Try, proposal.Id).Option("Try it out");
        if (fits && fresh && proposal.Trial!.Safe && act.Teacher.May(TeachingRights.Publish))
            yield return new TeachPress(TeachVerb.Publish, proposal.Id, TeachPress.Text(proposal.Version)).Option("Publish it");
        if (fits && own && proposal.State == ProposalState.Draft) yield return new TeachPress(TeachVerb.HandIn, proposal.Id).Option("Hand it in");
        foreach (var option in MoveCards.Options(act, proposal)) yield return option;
        if (own && proposal.Sheet.Length > 0) yield return new TeachPress(TeachVerb.Sheet, proposal.Id).Option("Change an answer");
        if (!own && proposal.State == ProposalState.Proposed && act.Teacher.May(TeachingRights.Publish)) yield return new TeachPress(TeachVerb.Refuse, proposal.Id).Option("Turn it down");
        if (fresh && proposal.Trial!.Report.Length > 0) yield return new TeachPress(TeachVerb.Figures, proposal.Id).Option("what the trial measured", OptionRole.Help);
        if (own) yield return new TeachPress(TeachVerb.Withdraw, proposal.Id).Option("put it away", OptionRole.Help);
    }

    private static ImmutableArray<string> Bounded(ImmutableArray<string> lines) =>
        lines.Length <= MostLines ? lines : [.. lines.Take(MostLines), $"and {lines.Length - MostLines} more"];
}
