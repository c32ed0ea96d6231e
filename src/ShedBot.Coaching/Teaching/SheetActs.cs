using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching;

/// <summary>Writing a sheet: beginning, answering, going back, looking at all of it. Each answer is kept as it comes.</summary>
internal static class SheetActs
{
    /// <summary>Of one author's, so that nobody fills the shelf.</summary>
    public const int MostDrafts = 20;

    private const int MostRead = 100;

    public static async Task<TeachAnswer> BeginAsync(TeachAct act, BeginSheet request)
    {
        if (Sheets.Find(request.Sheet) is not { } sheet) return TeachAnswer.No("sheet", "There is no such sheet. rules new shows those there are.");
        if ((await act.Store.ProposalsAsync(act.Club, ProposalState.Draft, MostRead, act.Ct)).Count(p => p.By == act.Teacher.Who) >= MostDrafts)
            return TeachAnswer.No("many", $"You have {MostDrafts} begun already. Hand one in or put one away first.");
        Tip? tip = null;
        if (request.Tip is { } wanted)
        {
            tip = await act.Store.FindTipAsync(act.Club, wanted, act.Ct);
            if (tip is null) return TeachAct.Gone;
            if (tip.State != TipState.Waiting) return TeachAnswer.No("taken", TipCards.WhyNotWaiting(tip));
        }

        var id = await act.NextIdAsync('P', async i => await act.Store.FindProposalAsync(act.Club, i, act.Ct) is not null);
        var proposal = Proposal.New(id, act.Teacher with { Name = act.Name }, sheet.Name, act.At) with { Version = 1, Tip = tip?.Id };
        if (tip is not null && sheet.Find(CreditQuestions.SaidBy) is not null && tip.From != act.Teacher.Who)
            proposal = proposal with { Answers = proposal.Answers.SetItem(CreditQuestions.SaidBy, [TeachAct.NameOf(tip.FromName)]) };
        var state = act.SheetOf(proposal)!;
        foreach (var question in sheet.Questions.Where(q => request.Given?.ContainsKey(q.Id) == true))
        {
            if (AnswerReading.Read(question, request.Given![question.Id], state.Context) is { Value: { } answer }) (proposal, state) = With(act, proposal, question, answer);
        }

        proposal = Composed(proposal, state);
        await act.SaveAsync(
            [
                act.Audit(AuditAct.Began, id, $"began: {sheet.Title}"),
                .. tip is null ? [] : new[] { act.Audit(AuditAct.TipTaken, tip.Id, $"took the tip of {TeachAct.NameOf(tip.FromName)} up as {id}") },
            ],
            proposal,
            tip is null ? null : tip with { State = TipState.Taken, Proposal = id, Version = tip.Version + 1 });
        var lead = tip is null ? sheet.Opening : $"{sheet.Opening} The tip says: \"{CleanText.OneLine(tip.Words, 600)}\"";
        return Next(act, proposal, state, lead);
    }

    /// <summary>The next open question, or the one named; with all answered, what it comes to.</summary>
    public static async Task<TeachAnswer> GoOnAsync(TeachAct act, GoOn request, ITrials trials)
    {
        if (await OwnAsync(act, request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (act.SheetOf(proposal) is not { } state) return ProposalActs.Look(act, proposal);
        if (request.Question is { } named && state.Asked.FirstOrDefault(q => q.Id == named) is { } question)
            return new TeachAnswer(SheetCards.Ask(proposal.Id, state, question), null, proposal, state, question);
        // With all answered it is looked at, with its trial: nobody publishes what they have not seen.
        return state.Wrong.IsEmpty && state.Next is null ? await ProposalActs.ShowAsync(act, new ShowProposal(proposal.Id), trials) : Next(act, proposal, state, null);
    }

    public static async Task<TeachAnswer> ShowAsync(TeachAct act, ShowSheet request)
    {
        if (await OwnAsync(act, request.Proposal) is not { } proposal) return TeachAct.Gone;
        return act.SheetOf(proposal) is { } state ? new TeachAnswer(SheetCards.All(proposal.Id, state), null, proposal, state) : ProposalActs.Look(act, proposal);
    }

    public static async Task<TeachAnswer> AnswerAsync(TeachAct act, AnswerSheet request)
    {
        if (await OwnAsync(act, request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (act.SheetOf(proposal) is not { } state) return TeachAnswer.No("sheet", "That came as a file; change the file and hand it in anew.");
        var audit = ImmutableArray.CreateBuilder<AuditEntry>();
        (Question Question, Refusal Why, string Typed)? wrong = null;
        // In the order of the sheet: what is asked further on may hang on what was answered before it.
        foreach (var question in state.Sheet.Questions.Where(q => request.Answers.ContainsKey(q.Id)))
        {
            if (!state.Asked.Any(q => q.Id == question.Id)) continue;
            var given = request.Answers[question.Id];
            // Passing over a question that was answered leaves the answer.
            if (given.IsEmpty && question.Required && state.Context.Has(question.Id)) continue;
            var read = AnswerReading.Read(question, given, state.Context);
            if (read.Refused is { } refused)
            {
                wrong ??= (question, refused, string.Join(' ', given));
                continue;
            }

            var was = state.Shown(question);
            (proposal, state) = With(act, proposal, question, read.Must);
            if (state.Shown(question) is var now && now != was)
                audit.Add(act.Audit(AuditAct.Changed, proposal.Id, $"{question.Put(state.Context)} {(was.Length == 0 ? "" : $"was \"{was}\", ")}is {(now.Length == 0 ? "skipped" : $"\"{now}\"")}"));
        }

        if (audit.Count > 0 || wrong is null)
        {
            proposal = Composed(proposal, state) with { State = ProposalState.Draft, ChangedAt = act.At, Version = proposal.Version + 1 };
            await act.SaveAsync(audit.Count > 0 ? audit.ToImmutable() : [act.Audit(AuditAct.Changed, proposal.Id, "answered as before")], proposal);
        }

        return wrong is { } told
            ? new TeachAnswer(SheetCards.Ask(proposal.Id, state, told.Question, told.Why.Say, told.Why.Code == "which" ? told.Typed : null), told.Why, proposal, state, told.Question)
            : Next(act, proposal, state, null);
    }

    /// <summary>The changes anew from the answers, as of the day on which it was begun; none while something is missing.</summary>
    public static Proposal Composed(Proposal proposal, SheetState state)
    {
        var draft = state.CanHandIn
            ? state.Sheet.Compose(state.Context, CreditQuestions.Of(state.Context, proposal.ByName, DateOnly.FromDateTime(proposal.BegunAt.UtcDateTime)))
            : null;
        var changes = draft is { Changes.IsEmpty: false } ? ChangesText.Write(draft.Changes) : "";
        var after = proposal with { Title = draft?.Title ?? "", Changes = changes };
        return after with { Trial = after.Trial is { } trial && trial.Changes == ProposalCards.Mark(after) ? trial : null };
    }

    /// <returns>The proposal when it is open and of this teacher's; they alone write on it.</returns>
    private static async Task<Proposal?> OwnAsync(TeachAct act, string id) =>
        await act.FindAsync(id) is { IsOpen: true } proposal && proposal.By == act.Teacher.Who ? proposal : null;

    private static (Proposal, SheetState) With(TeachAct act, Proposal proposal, Question question, Answer answer)
    {
        var after = proposal with { Answers = proposal.Answers.SetItem(question.Id, answer.Values) };
        return (after, act.SheetOf(after)!);
    }

    private static TeachAnswer Next(TeachAct act, Proposal proposal, SheetState state, string? lead) => (state.Wrong.FirstOrDefault() ?? state.Next) is { } next
        ? new TeachAnswer(SheetCards.Ask(proposal.Id, state, next, lead ?? (state.Context.Answers.IsEmpty ? null : SheetCards.Progress(state, next))), null, proposal, state, next)
        : ProposalActs.Look(act, proposal) with { Sheet = state };
}
