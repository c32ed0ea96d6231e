using System.Collections.Immutable;

namespace ShedBot.Coaching.Teaching;

/// <summary>Looking at what stands, what waits and what was done; and a club's choices.</summary>
internal static class LookActs
{
    private const int MostWaiting = 100, MostEditions = 15, LogPage = 15;

    public static async Task<TeachAnswer> RulesAsync(TeachAct act) => new(LookCards.Rules(
        act.Rules,
        (await act.Store.EditionsAsync(act.Club, 1, act.Ct)).FirstOrDefault(),
        await act.Store.ProposalsAsync(act.Club, ProposalState.Proposed, MostWaiting, act.Ct),
        await DraftsAsync(act),
        await act.Store.TipsAsync(act.Club, TipState.Waiting, MostWaiting, act.Ct),
        act.Teacher));

    public static async Task<TeachAnswer> WaitingAsync(TeachAct act) =>
        new(LookCards.Waiting(await act.Store.ProposalsAsync(act.Club, ProposalState.Proposed, MostWaiting, act.Ct), await DraftsAsync(act)));

    public static async Task<TeachAnswer> LogAsync(TeachAct act, ShowLog request)
    {
        // Without how drafts were written: those who look want to know what became of the rules.
        var (shown, before) = (ImmutableArray.CreateBuilder<AuditEntry>(), request.Before);
        while (shown.Count < LogPage && await act.Store.AuditAsync(act.Club, before, MostWaiting, act.Ct) is { IsEmpty: false } page)
        {
            foreach (var entry in page)
            {
                before = entry.Number;
                if (request.Whole || entry.Act is not (AuditAct.Began or AuditAct.Changed)) shown.Add(entry);
                if (shown.Count == LogPage) break;
            }
        }

        return new TeachAnswer(LookCards.Log(shown.ToImmutable(), request.Whole));
    }

    public static async Task<TeachAnswer> EditionsAsync(TeachAct act) => new(LookCards.Editions(await act.Store.EditionsAsync(act.Club, MostEditions, act.Ct), act.Teacher));

    public static TeachAnswer Conflicts(TeachAct act) => new(LookCards.Conflicts(act.Rules));

    public static async Task<TeachAnswer> SettingsAsync(TeachAct act) => new(LookCards.Settings(await act.Store.TeachingSettingsAsync(act.Club, act.Ct), act.Teacher, act.Rules.Knowledge));

    public static async Task<TeachAnswer> ChooseAsync(TeachAct act, ChooseTeaching wish)
    {
        if (wish.MostFactor is { } most && most is not (>= 1 and <= 10)) return TeachAnswer.No("range", "The most that learning may move a cause is from 1 to 10 times.");
        if (wish.MemberShare is { } share && share is not (> 0 and <= 1)) return TeachAnswer.No("range", "One member's share is above 0 and at most 100 %.");
        var before = await act.Store.TeachingSettingsAsync(act.Club, act.Ct);
        var after = before with
        {
            ProposeRoles = wish.ProposeRoles ?? before.ProposeRoles,
            PublishRoles = wish.PublishRoles ?? before.PublishRoles,
            TwoPeople = wish.TwoPeople ?? before.TwoPeople,
            Learning = wish.Learning ?? before.Learning,
            MostFactor = wish.MostFactor ?? before.MostFactor,
            MemberShare = wish.MemberShare ?? before.MemberShare,
        };
        ImmutableArray<string> changed = [.. LookCards.Lines(before).Zip(LookCards.Lines(after)).Where(p => p.First != p.Second).Select(p => $"Before: {p.First} Now: {p.Second}")];
        if (changed.IsEmpty) return new TeachAnswer(LookCards.Settings(before, act.Teacher, act.Rules.Knowledge));
        after = after with { Version = before.Version + 1 };
        await act.SaveAsync([act.Audit(AuditAct.ChoseSettings, "", $"chose how the club goes about its rules. {string.Join(' ', changed)}")], settings: after);
        return new TeachAnswer(LookCards.Settings(after, act.Teacher, act.Rules.Knowledge));
    }

    private static async Task<ImmutableArray<Proposal>> DraftsAsync(TeachAct act) =>
        [.. (await act.Store.ProposalsAsync(act.Club, ProposalState.Draft, MostWaiting, act.Ct)).Where(p => p.By == act.Teacher.Who)];
}
