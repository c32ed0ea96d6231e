using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>
/// The shell around a club's own rules, the same for every platform: checks the rights of whoever acts, on every act; reads, decides, and keeps all that the
/// act changes with its entry in the log in one transaction. Two at once never overwrite each other: the second is told.
/// </summary>
/// <param name="rules">The project's rules, asked each time.</param>
public sealed class TeachDesk(ITeachingStore store, Func<RuleBase> rules, ITrials trials) : IDisposable
{
    private readonly MemberGates gates = new();
    private readonly RulesNowReader reader = new(store, rules);
    private readonly LastCounts counts = new(store);
    private readonly ReportRoom reports = new(store);
    private readonly RuleEars ears = new();

    /// <param name="teacher">Who acts, with the rights that came with this very act.</param>
    /// <param name="at">When; for the log.</param>
    /// <param name="progress">How far a trial or report is, 0 to 1; or null.</param>
    /// <returns>What to show, and why nothing was done when nothing was. Never throws for what was asked for.</returns>
    /// <exception cref="StaleSaveException">Others saved first, again and again; nothing was changed.</exception>
    public Task<TeachAnswer> HandleAsync(Teacher teacher, TeachRequest request, DateTimeOffset at, CancellationToken ct, IProgress<double>? progress = null) =>
        !teacher.May(request.Needs) ? Task.FromResult(TeachAnswer.No("rights", WhyNot(request.Needs)))
        : request is TryOut wanted ? TryAsync(teacher, wanted, at, progress, ct)
        : request is CountRequest count ? CountAsync(teacher, count, at, ct)
        : request is ShowReport report ? ReportAsync(teacher, report, progress, ct)
        : AloneAsync(teacher, at, act => TakeAsync(act, request), ct);

    /// <summary>Looks over a club's cases where that is due, and does what the club has chosen. To be asked often: most times it comes to nothing, quickly.</summary>
    /// <param name="trying">Told before a trial, which can take a minute or two; left out: nobody waits.</param>
    public Task<RoundNews> RoundAsync(ClubId club, DateTimeOffset at, CancellationToken ct, Func<Task>? trying = null) =>
        new LearningRounds(store, reader, trials, trying ?? (() => Task.CompletedTask)).RoundAsync(club, at, ct);

    public void Dispose()
    {
        gates.Dispose();
        reports.Dispose();
    }

    private Task<T> AloneAsync<T>(Teacher teacher, DateTimeOffset at, Func<TeachAct, Task<T>> take, CancellationToken ct) =>
        gates.AloneAsync(teacher.Who, async () => await take(new TeachAct(store, await reader.OfAsync(teacher.Club, ct), teacher, at, ct)), ct);

    private async Task<TeachAnswer> TryAsync(Teacher teacher, TryOut request, DateTimeOffset at, IProgress<double>? progress, CancellationToken ct)
    {
        var (work, refused) = await AloneAsync(teacher, at, act => TrialActs.PrepareAsync(act, request), ct);
        if (work is null) return refused!;
        var tried = work.Weaker.IsEmpty ? await trials.TryAsync(work.Under.Knowledge, work.Changed, work.Cases, progress, ct) : new TriedOut("", work.Weaker);
        return await AloneAsync(teacher, at, act => TrialActs.KeepAsync(act, request, work, tried, trials), ct);
    }

    private async Task<TeachAnswer> CountAsync(Teacher teacher, CountRequest request, DateTimeOffset at, CancellationToken ct)
    {
        var (work, refused) = await AloneAsync(
            teacher, at, async act => await LearnActs.RefusedAsync(act, request) is { } why ? (null, why) : (await CountWork.ReadAsync(act.Store, act.Rules, act.Club, at, ct), (TeachAnswer?)null), ct);
        if (work is null) return refused!;
        var (counted, report) = await counts.OfAsync(teacher.Club, work, ct);
        return await AloneAsync(teacher, at, act => LearnActs.CountedAsync(act, request, counted, report), ct);
    }

    /// <summary>Changes nothing, so nobody waits for it.</summary>
    private async Task<TeachAnswer> ReportAsync(Teacher teacher, ShowReport request, IProgress<double>? progress, CancellationToken ct) =>
        await reports.MakeAsync(await reader.OfAsync(teacher.Club, ct), teacher, request, progress, ct);

    private Task<TeachAnswer> TakeAsync(TeachAct act, TeachRequest request) => request switch
    {
        ShowRules => LookActs.RulesAsync(act),
        ShowWaiting => LookActs.WaitingAsync(act),
        ShowProposal r => ProposalActs.ShowAsync(act, r, trials),
        ShowFigures r => ProposalActs.FiguresAsync(act, r, trials),
        ChooseSheet r => Task.FromResult(new TeachAnswer(SheetCards.Choose(r.Tip))),
        BeginSheet r => SheetActs.BeginAsync(act, r),
        GoOn r => SheetActs.GoOnAsync(act, r, trials),
        AnswerSheet r => SheetActs.AnswerAsync(act, r),
        ShowSheet r => SheetActs.ShowAsync(act, r),
        HandIn r => ProposalActs.HandInAsync(act, r),
        Publish r => PublishActs.PublishAsync(act, r),
        Refuse r => ProposalActs.RefuseAsync(act, r),
        Withdraw r => ProposalActs.WithdrawAsync(act, r),
        AskTakeBack r => PublishActs.AskAsync(act, r),
        TakeBack r => PublishActs.TakeBackAsync(act, r),
        UploadRules r => FileActs.UploadAsync(act, r),
        DownloadRules => FileActs.DownloadAsync(act),
        PassTip r => TipActs.PassAsync(act, r),
        ShowTips => TipActs.ListAsync(act),
        ShowTip r => TipActs.ShowAsync(act, r),
        DeclineTip r => TipActs.DeclineAsync(act, r),
        ShowLog r => LookActs.LogAsync(act, r),
        ShowEditions => LookActs.EditionsAsync(act),
        ShowConflicts => Task.FromResult(LookActs.Conflicts(act)),
        ShowTeachingSettings => LookActs.SettingsAsync(act),
        ChooseTeaching r => LookActs.ChooseAsync(act, r),
        ShowNumbers r => LearnActs.NumbersAsync(act, r),
        ShowNumber r => LearnActs.NumberAsync(act, r),
        LeaveOut r => LearnActs.LeaveOutAsync(act, r),
        NeverLearn r => LearnActs.NeverAsync(act, r),
        ShowReports => Task.FromResult(new TeachAnswer(ReportMenu.Card)),
        ShowUnheard r => UnheardActs.ListAsync(act, r, ears),
        ShowUnheardWords r => UnheardActs.ShowAsync(act, r, ears),
        SearchMeaning r => UnheardActs.SearchAsync(act, r, ears),
        TeachMeaning r => UnheardActs.TeachAsync(act, r, ears),
        DropUnheard r => UnheardActs.DropAsync(act, r, ears),
        ChooseCheckFor r => Task.FromResult(ReportMenu.CheckFor(act, r.Complaint)),
        _ => throw new ArgumentOutOfRangeException(nameof(request), request, "There is no such request."),
    };

    private static string WhyNot(TeachingRights needs) => needs switch
    {
        TeachingRights.Publish => "Publishing, refusing and taking back is for those to whom your club has given it.",
        TeachingRights.Manage => "That is for those who manage the club.",
        _ => "Writing rules is for those to whom your club has given it. But a tip of yours is always welcome!",
    };
}
