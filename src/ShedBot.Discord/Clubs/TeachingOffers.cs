using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What fits what is being typed: sheets, drafts, answers to the open question. Whoever may not write rules is offered nothing.</summary>
internal sealed class TeachingOffers(Parts parts)
{
    private readonly TeachingDoor door = new(parts.Teaching);

    public async Task SuggestAsync(Interaction used, Acknowledgement live, CancellationToken ct)
    {
        var sub = used.Data?.Options?.FirstOrDefault(o => o.Type == OptionTypes.SubCommand);
        var typed = sub?.Options?.FirstOrDefault(o => o.Focused == true);
        IEnumerable<(string Says, string Value)> fitting = sub is not null && typed is not null && await door.TeacherAsync(used, ct) is { } teacher && teacher.May(TeachingRights.Propose)
            ? typed.Name switch
            {
                TeachingCommands.Sheet => Sheets.All.Where(s => Holds(s.Title, typed.Text)).Select(s => (s.Title, s.Name)),
                TeachingCommands.Proposal => (await TeachingCommanding.DraftsAsync(parts, teacher, ct)).Select(p => (Called(p), p.Id)).Where(p => Holds(p.Item1, typed.Text)),
                TeachingCommands.Answer => await AnswersAsync(teacher, TeachingCommanding.Text(sub, TeachingCommands.Proposal), typed.Text ?? "", ct),
                _ => [],
            }
            : [];
        await live.OfferAsync([.. fitting.Take(Limits.SelectOptions).Select(f => new CommandChoice(TextRuns.Cut(Markup.OneLine(f.Says), Limits.SelectText), f.Value))], ct);
    }

    private async Task<IEnumerable<(string Says, string Value)>> AnswersAsync(Teacher teacher, string? proposal, string typed, CancellationToken ct)
    {
        proposal ??= (await TeachingCommanding.DraftsAsync(parts, teacher, ct)).FirstOrDefault()?.Id;
        if (proposal is null) return [];
        var open = await parts.Rules.HandleAsync(teacher, new GoOn(proposal), parts.Clock.GetUtcNow(), ct);
        return open is { Refused: null, Sheet: { } sheet, Question: { IsPicked: true } question }
            ? question.Suggest(typed, sheet.Context, Limits.SelectOptions).Select(c => (c.Says, c.Value))
            : [];
    }

    private static string Called(Proposal proposal) =>
        $"{(proposal.Title.Length > 0 ? proposal.Title : Sheets.Find(proposal.Sheet)?.Title ?? "from a file")} ({proposal.Id})";

    private static bool Holds(string text, string? typed) => text.Contains((typed ?? "").Trim(), StringComparison.OrdinalIgnoreCase);
}
