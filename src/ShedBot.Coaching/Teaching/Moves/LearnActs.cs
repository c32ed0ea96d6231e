using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What moderators do about numbers that were counted: look, make a proposal, leave single ones out, never learn one.</summary>
internal static class LearnActs
{
    /// <returns>Why it need not be counted at all; null when it is to be.</returns>
    public static async Task<TeachAnswer?> RefusedAsync(TeachAct act, CountRequest request) =>
        request is not CountAnew anew ? null
        : await act.FindAsync(anew.Proposal) is not { } proposal || CountedNumbers.Read(proposal) is null || !MoveCards.MayChange(act, proposal) ? TeachAct.Gone
        : proposal.IsOpen ? null
        : TeachAnswer.No("state", ProposalCards.Standing(proposal));

    /// <summary>Shows or keeps what was counted.</summary>
    public static async Task<TeachAnswer> CountedAsync(TeachAct act, CountRequest request, CountWork work, LearningReport report)
    {
        var settings = await act.Store.TeachingSettingsAsync(act.Club, act.Ct);
        if (await work.Basis.WhyStaleAsync(act.Store, act.Rules, settings, act.Ct) is { } why) return TeachAnswer.No("stale", why);
        return request switch
        {
            ProposeLearnt => await ProposeAsync(act, CountedNumbers.Of(work, report), work.Now),
            CountAnew r => await AnewAsync(act, r, CountedNumbers.Of(work, report), work.Now),
            _ => new TeachAnswer(MoveCards.Look(work, report, settings, await UpAsync(act, work, report))),
        };
    }

    /// <returns>ShedBot's own open proposal where it says the very same; else null.</returns>
    private static async Task<Proposal?> UpAsync(TeachAct act, CountWork work, LearningReport report) =>
        await RoundActs.OpenAsync(act) is { } open && await StaleAsync(act, open) is null && CountedNumbers.Read(open) is { } up
        && LearntSteps.BetweenCounts(up.Counted, report.Learnt, work.Unlearnt, work.Limits).All(s => !s.IsClear) ? open : null;

    public static async Task<TeachAnswer> NumbersAsync(TeachAct act, ShowNumbers request) =>
        await FindAsync(act, request.Proposal) is var (proposal, counted) ? new TeachAnswer(MoveCards.Numbers(act, proposal, counted, Math.Clamp(request.From, 0, counted.Numbers.Length)), null, proposal) : TeachAct.Gone;

    public static async Task<TeachAnswer> NumberAsync(TeachAct act, ShowNumber request)
    {
        if (await FindAsync(act, request.Proposal) is not var (proposal, counted) || Find(counted, request.Number) is not { } number) return TeachAct.Gone;
        return new TeachAnswer(MoveCards.Number(act, proposal, counted, number, (await act.Store.TeachingSettingsAsync(act.Club, act.Ct)).Off.Contains(number.Key)), null, proposal);
    }

    public static async Task<TeachAnswer> LeaveOutAsync(TeachAct act, LeaveOut request)
    {
        if (await FindAsync(act, request.Proposal) is not var (proposal, counted) || Find(counted, request.Number) is not { } number) return TeachAct.Gone;
        if (!proposal.IsOpen) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        if (await StaleAsync(act, proposal) is { } stale) return stale;
        var after = counted with { Out = request.Out ? counted.Out.Add(number.Key) : counted.Out.Remove(number.Key) };
        // ShedBot puts up no proposal of nothing: whoever leaves all of it out has turned it down.
        if (proposal.By == default && after.IsAllOut)
        {
            var away = await RoundActs.AllOutAsync(act, With(proposal, after, act.Rules.LearntNumbers, act.At), number.Key);
            return new TeachAnswer(MoveCards.PutAway, null, away);
        }

        var changed = With(proposal, after, act.Rules.LearntNumbers, act.At);
        var (called, never) = (TargetWords.Called(act.Rules.Knowledge, number.Key), (await act.Store.TeachingSettingsAsync(act.Club, act.Ct)).Off.Contains(number.Key));
        await act.SaveAsync([act.Audit(AuditAct.Changed, proposal.Id, $"{(request.Out ? "left out" : "took in again")}: {called}")], changed);
        return new TeachAnswer(MoveCards.Number(act, changed, after, number, never), null, changed);
    }

    public static async Task<TeachAnswer> NeverAsync(TeachAct act, NeverLearn request)
    {
        var before = await act.Store.TeachingSettingsAsync(act.Club, act.Ct);
        // What the rules have no more can still be taken off the list.
        var key = before.Off.FirstOrDefault(k => TargetWords.Mark(k) == request.Number) ?? TargetWords.Find(act.Rules.Knowledge, request.Number)?.Key;
        if (key is null) return TeachAct.Gone;
        var after = before with { Off = request.Never ? before.Off.Add(key) : before.Off.Remove(key), Version = before.Version + 1 };
        var called = TargetWords.Called(act.Rules.Knowledge, key);
        if (after.Off.SetEquals(before.Off)) return new TeachAnswer(LookCards.Settings(before, act.Teacher, act.Rules.Knowledge));
        await act.SaveAsync([act.Audit(AuditAct.ChoseSettings, "", request.Never ? $"never to be learnt: {called}" : $"may be learnt again: {called}")], settings: after);
        return new TeachAnswer(new Card(
            request.Never ? "Never learnt" : "May be learnt again",
            [Say.Text($"{Say.Sentence(called)} {(request.Never ? "It does not move any more. What was learnt of it already goes back with the next count." : "It is counted with the others from now on.")}")],
            [LearningChoices.NeverOption(TargetWords.Mark(key), !request.Never), new TeachPress(TeachVerb.Settings).Option("how we learn", OptionRole.Help), new TeachPress(TeachVerb.Learn).Option("what could be learnt", OptionRole.Help)]));
    }

    /// <returns>Why a counted proposal is to be counted anew before anything else; null when its numbers are good, and for one that was not counted.</returns>
    public static async Task<TeachAnswer?> StaleAsync(TeachAct act, Proposal proposal)
    {
        if (CountedNumbers.Read(proposal) is not { } counted) return null;
        var why = await counted.Basis.WhyStaleAsync(act.Store, act.Rules, await act.Store.TeachingSettingsAsync(act.Club, act.Ct), act.Ct);
        return why is not null ? new TeachAnswer(ProposalCards.Of(act, proposal, lead: why), new Refusal("stale", why), proposal)
            : counted.Then(act.Rules.LearntNumbers).Equals(act.Rules.LearntNumbers) ? TeachAnswer.No("nothing", "With all of that left out it changes nothing. Take one in again, or put it away.")
            : null;
    }

    /// <summary>A proposal with these numbers in place of what it had.</summary>
    public static Proposal With(Proposal proposal, CountedNumbers counted, Learnt now, DateTimeOffset at) => proposal with
    {
        Answers = counted.Write(),
        Learnt = LearntText.Write(counted.Then(now)),
        Title = MoveCards.TitleOf(counted.Numbers.Count(n => !counted.Out.Contains(n.Key))),
        Trial = null,
        ChangedAt = at,
        Version = proposal.Version + 1,
    };

    private static async Task<TeachAnswer> ProposeAsync(TeachAct act, CountedNumbers counted, Learnt now)
    {
        if (counted.Numbers.IsEmpty) return TeachAnswer.No("nothing", $"There is nothing new to learn from {MoveCards.Cases(counted)}.");
        var id = await act.NextIdAsync('P', async i => await act.Store.FindProposalAsync(act.Club, i, act.Ct) is not null);
        var proposal = With(Proposal.New(id, act.Teacher with { Name = act.Name }, "", act.At), counted, now, act.At);
        await act.SaveAsync([act.Audit(AuditAct.Began, id, $"made a proposal of what mended cases say: {proposal.Title}")], proposal);
        return ProposalActs.Look(act, proposal);
    }

    private static async Task<TeachAnswer> AnewAsync(TeachAct act, CountAnew request, CountedNumbers counted, Learnt now)
    {
        if (await FindAsync(act, request.Proposal) is not var (proposal, before) || !proposal.IsOpen) return TeachAct.Gone;
        var after = With(proposal, counted with { Out = before.Out.Intersect(counted.Numbers.Select(n => n.Key)) }, now, act.At);
        await act.SaveAsync([act.Audit(AuditAct.Changed, proposal.Id, $"counted anew: {after.Title}")], after);
        return ProposalActs.Look(act, after);
    }

    private static CountedNumber? Find(CountedNumbers counted, string mark) => counted.Numbers.FirstOrDefault(n => TargetWords.Mark(n.Key) == mark);

    private static async Task<(Proposal Proposal, CountedNumbers Counted)?> FindAsync(TeachAct act, string id) =>
        await act.FindAsync(id) is { } proposal && MoveCards.MayChange(act, proposal) && CountedNumbers.Read(proposal) is { } counted ? (proposal, counted) : null;
}
