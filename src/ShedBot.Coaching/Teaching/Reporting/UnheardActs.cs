using System.Collections.Immutable;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Words of riders that were not understood: ranked, taught with one tap, or dropped. Their short names are looked up among the club's own, so that those of another club find nothing.</summary>
internal static class UnheardActs
{
    /// <summary>All that are kept for a club.</summary>
    private const int MostRead = 2_000;

    private const int MostProposals = 100;

    public static async Task<TeachAnswer> ListAsync(TeachAct act, ShowUnheard request, RuleEars ears)
    {
        var from = Math.Clamp(request.From, 0, MostRead);
        ImmutableArray<UnheardRow> rows = [.. (await RowsAsync(act, ears)).Skip(from).Take(UnheardCards.PageRows + 1)];
        return new TeachAnswer(UnheardCards.List(rows, from, await TaughtAsync(act)));
    }

    public static async Task<TeachAnswer> ShowAsync(TeachAct act, ShowUnheardWords request, RuleEars ears)
    {
        var rows = (await RowsAsync(act, ears)).SkipWhile(r => UnheardCards.Mark(r) != request.Words).Take(2).ToList();
        if (rows is not [var row, ..]) return Over;
        return new TeachAnswer(UnheardCards.Of(act.Rules.Knowledge, row, rows.Count > 1 ? rows[1] : null, (await TaughtAsync(act)).GetValueOrDefault(UnheardCards.Mark(row))));
    }

    public static async Task<TeachAnswer> SearchAsync(TeachAct act, SearchMeaning request, RuleEars ears)
    {
        if (await FindAsync(act, request.Words, ears) is not { } row) return Over;
        var all = Meaning.All(act.Rules.Knowledge);
        ImmutableArray<Choice> choices = [.. all.Select(m => m.Choice)];
        return new TeachAnswer(UnheardCards.Found(row, request.Typed, [.. Search.Ranked(choices, request.Typed)]));
    }

    public static async Task<TeachAnswer> TeachAsync(TeachAct act, TeachMeaning request, RuleEars ears)
    {
        if (await FindAsync(act, request.Words, ears) is not { } row) return Over;
        if (row.Phrase.Length == 0) return TeachAnswer.No("nothing", "Nothing is left of those words that could be taught. Drop them, or write the phrase on a sheet: rules phrase.");
        var meaning = request.Meaning.Length > 0 ? Meaning.Find(act.Rules.Knowledge, request.Meaning) : null;
        if (request.Meaning.Length > 0 && meaning is null) return TeachAnswer.No("gone", "The rules have that no more. Pick another meaning.");
        var given = Meaning.Given(meaning, row.Phrase);
        // The same button pressed twice is one sheet.
        var begun = meaning is null ? null : (await act.Store.ProposalsAsync(act.Club, ProposalState.Draft, MostProposals, act.Ct))
            .FirstOrDefault(p => p.By == act.Teacher.Who && p.Sheet == PhraseSheet.Name && given.All(g => p.Answers.TryGetValue(g.Key, out var said) && said.SequenceEqual(g.Value)));
        return begun is not null ? ProposalActs.Look(act, begun) : await SheetActs.BeginAsync(act, new BeginSheet(PhraseSheet.Name, Given: given));
    }

    public static async Task<TeachAnswer> DropAsync(TeachAct act, DropUnheard request, RuleEars ears)
    {
        if (await FindAsync(act, request.Words, ears) is not { } row) return Over;
        // Written down first: should the process die in between, the words are still there to be dropped. What only one member says is nobody else's to read later.
        await act.SaveAsync([act.Audit(AuditAct.DroppedWords, "", row.OfOneMember ? "dropped words of one member that were not understood" : $"dropped words that were not understood: \"{row.Words}\"")]);
        foreach (var written in row.Written) await act.Store.DropUnheardAsync(act.Club, written, act.Ct);
        return await ListAsync(act, new ShowUnheard(), ears);
    }

    private static TeachAnswer Over { get; } = new(
        new("Not there any more", [new Cards.TextBlock("Those words are understood by now, or somebody has dropped them.")], [new TeachPress(TeachVerb.Unheard).Option("the other words", Cards.OptionRole.Help)]),
        new Refusal("gone", "Those words are understood by now, or somebody has dropped them."));

    private static async Task<UnheardRow?> FindAsync(TeachAct act, string words, RuleEars ears) =>
        ears.Of(act.Rules).Rows((await act.Store.UnheardAsync(act.Club, MostRead, act.Ct)).Where(u => UnheardCards.Mark(u.Words) == words)).FirstOrDefault();

    private static async Task<IEnumerable<UnheardRow>> RowsAsync(TeachAct act, RuleEars ears) =>
        ears.Of(act.Rules).Rows(await act.Store.UnheardAsync(act.Club, MostRead, act.Ct));

    /// <summary>Proposals that would teach phrases, by the short names of these: handed in, or the teacher's own.</summary>
    private static async Task<ImmutableDictionary<string, string>> TaughtAsync(TeachAct act)
    {
        var taught = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var state in new[] { ProposalState.Proposed, ProposalState.Draft })
        {
            foreach (var proposal in await act.Store.ProposalsAsync(act.Club, state, MostProposals, act.Ct))
            {
                if (proposal.Sheet != PhraseSheet.Name || (state == ProposalState.Draft && proposal.By != act.Teacher.Who)) continue;
                foreach (var phrase in proposal.Answers.GetValueOrDefault(PhraseSheet.Add, [])) taught.TryAdd(UnheardCards.Mark(phrase), proposal.Id);
            }
        }

        return taught.ToImmutable();
    }
}
