using System.Globalization;
using Microsoft.Extensions.Logging;
using NodaTime;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Loading;
using ShedBot.Rules;
using ShedBot.Storage;
using ShedBot.Terminal;

namespace ShedBot.Practice;

/// <summary>One sitting at the practice terminal: a line in, what the coach says out. What was said is marked as said only after it has left the program.</summary>
internal sealed class PracticeSession : IDisposable
{
    /// <summary>Characters of a typed line that are read. Above what the coach takes for too long, so that it can say so.</summary>
    public const int MostRead = 8000;

    /// <summary>Characters of a typed line that are shown again.</summary>
    public const int MostRepeated = 400;

    private const int MostUnsaid = 100, MostCases = 20;

    private readonly IShedStore store;
    private readonly PracticeRules rules;
    private readonly IScreen screen;
    private readonly BoundedLines lines;
    private readonly TimeProvider clock;
    private readonly ILogger logger;
    private readonly CaseNumbers numbers;
    private readonly CaseDesk desk;
    private readonly Logbook logbook;
    private readonly SettingUp settingUp;
    private readonly RiderDesk riderDesk;
    private readonly Reminders reminders;
    private readonly Skipping skipping;
    private readonly Panel panel;
    private readonly TeachingTalk teaching;
    private MemberName member;

    public PracticeSession(
        IShedStore store, IRiderStore riders, ITeachingStore taught, RulesInUse files, IScreen screen, TextReader input, TimeProvider clock, ILogger logger, MemberName first, string copies,
        TimelinePainter paint, ITrials trials, CalibrationPainter paintCalibration)
    {
        (this.store, this.screen, this.clock, this.logger, member) = (store, screen, clock, logger, first);
        rules = new PracticeRules(files, taught);
        lines = new BoundedLines(input, MostRead);
        numbers = new CaseNumbers(store);
        desk = new CaseDesk(store, riders, rules.Coaches, clock, numbers.Next, "say forget it, then bike use and its name, and tell me again");
        var zone = Speakers.ZoneOf(clock);
        riderDesk = new RiderDesk(store, riders, rules.Coaches, (_, _) => ValueTask.FromResult(zone));
        var speakers = new Speakers(riderDesk, zone);
        panel = new Panel(screen);
        logbook = new Logbook(store, riders, rules, screen, panel, speakers, clock, copies, paint);
        settingUp = new SettingUp(logbook, rules, panel, speakers, clock);
        reminders = new Reminders(store, riderDesk, rules, screen, panel, speakers, clock, logger);
        skipping = new Skipping(riderDesk, logbook, reminders, rules, screen, speakers, clock);
        teaching = new TeachingTalk(new TeachDesk(taught, () => rules.Ground.Base, trials), store, screen, panel, clock, copies, paintCalibration);
    }

    public async Task RunAsync(CancellationToken ct)
    {
        await LookAtRulesAsync(ct);
        logger.Opened(rules.Knowledge.Version);
        await GreetAsync(ct);
        while (true)
        {
            screen.Invite(member);
            await screen.FlushAsync(ct);
            // A read from a terminal cannot be called off, so the wait for it is.
            if (await lines.ReadAsync(ct).AsTask().WaitAsync(ct) is not { } line) break;
            screen.Repeat(line);
            if (!await HandleAsync(line, ct)) break;
            // After the line: whoever types answers what they have seen, not what came meanwhile.
            await GuardAsync(() => reminders.LookAsync(member, ct));
            await GuardAsync(() => teaching.LookAsync(member, ct));
            await GuardAsync(() => teaching.LookOverAsync(ct));
        }

        screen.Say("Bye. Everything you told me is kept; we go on where we were.");
        await screen.FlushAsync(ct);
    }

    public void Dispose()
    {
        desk.Dispose();
        logbook.Dispose();
        riderDesk.Dispose();
        teaching.Dispose();
    }

    /// <returns>False when the member is leaving.</returns>
    private async Task<bool> HandleAsync(string line, CancellationToken ct)
    {
        await LookAtRulesAsync(ct);
        var typed = Typed.Read(CleanText.Of(line), panel.Keys);
        if (typed is TypedAs)
        {
            settingUp.Leave();
            teaching.Leave();
        }

        if (typed is not (TypedBye or TypedAs or TypedHelp) && await TeachAsync(CleanText.Of(line), ct)) return true;
        if (typed is not (TypedBye or TypedAs or TypedHelp) && await SetUpAsync(CleanText.Of(line), ct)) return true;
        switch (typed)
        {
            case TypedBye:
                return false;
            case TypedAs to:
                member = to.Member;
                await GreetAsync(ct);
                break;
            case TypedHelp:
                panel.ShowAside(LocalCards.Help);
                break;
            case TypedCases:
                panel.ShowAside(LocalCards.Cases(await store.CasesOfAsync(member.Id, MostCases, ct)));
                break;
            case TypedBike:
                await GuardAsync(() => logbook.TakeAsync(member, (BikeRequest)new ShowBike(), ct));
                break;
            case TypedBelief:
                await ShowBeliefAsync(ct);
                break;
            case TypedSkip skip:
                await GuardAsync(() => skipping.ToAsync(member, skip.Words, ct));
                break;
            case TypedOption picked when NudgeAnswer.Read(picked.Option.Id) is { } nudge:
                await AnswerAsync(nudge, null, ct);
                break;
            case TypedOption picked when GarageCards.IsOurs(picked.Option.Id):
                panel.Clear();
                if (GarageCards.Sure(picked.Option.Id) is { } remove) await GuardAsync(() => logbook.TakeAsync(member, (BikeRequest)remove, ct));
                else panel.ShowAside(GarageCards.Kept);
                await AskAgainAsync(ct);
                break;
            case TypedOption picked:
                await TurnAsync(id => new MemberChose(id, picked.Option.Id), ct);
                break;
            case TypedWords said when panel.MeansOneOfSeveral(said.Words):
                screen.Say("Which of them? Pick its number first; then you can say so.");
                break;
            case TypedWords said when reminders.Answered(said.Words) is { } answer:
                await AnswerAsync(answer, null, ct);
                break;
            case TypedWords said when reminders.Read(said.Words) is { } wish:
                await GuardAsync(() => reminders.TakeAsync(member, wish, ct));
                break;
            case TypedWords said when await logbook.ReadAsync(member, said.Words, loose: !panel.IsAsking, ct) is { } request:
                await LogAsync(request, ct);
                break;
            case TypedWords said:
                await TurnAsync(id => new MemberSaid(id, said.Words), ct);
                break;
        }

        return true;
    }

    /// <returns>Whether the line was about the club's rules.</returns>
    private async Task<bool> TeachAsync(string line, CancellationToken ct)
    {
        var (taken, wrote) = (false, teaching.IsWriting);
        if (!await GuardAsync(async () => taken = await teaching.TakeAsync(member, line, ct))) return true;
        if (taken && teaching.IsWriting) settingUp.Leave();
        // What can be done with a card about rules goes before what the coach asked.
        if (taken && wrote && !teaching.IsWriting && !panel.IsTeaching) await AskAgainAsync(ct);
        return taken;
    }

    /// <returns>Whether the line was for the guided set-up of a bike.</returns>
    private async Task<bool> SetUpAsync(string line, CancellationToken ct)
    {
        if (!settingUp.IsOpen)
        {
            if (!SettingUp.Begins(line)) return false;
            await GuardAsync(() => settingUp.BeginAsync(member, ct));
        }
        else
        {
            var taken = false;
            if (!await GuardAsync(async () => taken = await settingUp.TakeAsync(member, line, ct))) return true;
            if (!taken) return false;
        }

        if (!settingUp.IsOpen) await AskAgainAsync(ct);
        return true;
    }

    /// <summary>Something else came between: what the coach asked is still to be answered.</summary>
    private async Task AskAgainAsync(CancellationToken ct)
    {
        if (await QuestionAsync(ct) is { } question) panel.Show(question with { Repeated = true });
    }

    private async Task LogAsync(Result<BikeRequest> request, CancellationToken ct)
    {
        // "Not riding till ..." answers a reminder: then it is for all of the member's bikes.
        if (request.Value is RestEntry rest && panel.NotRiding() is { } answer)
        {
            await AnswerAsync(answer, rest.Until, ct);
            return;
        }

        await GuardAsync(async () =>
        {
            // While the coach asks, nothing else is: a number that was meant for the coach must not be a consent.
            if (!await logbook.TakeAsync(member, request, ct)) await reminders.HeardAsync(member, ct);
            else if (!panel.IsAsking) await reminders.BesideAsync(member, ct);
        });
    }

    /// <summary>An answer to a reminder. What the coach asked before is shown once more when nothing else is open.</summary>
    private async Task AnswerAsync(NudgeAnswer answer, LocalDate? until, CancellationToken ct)
    {
        TroubleShown? trouble = null;
        if (!await GuardAsync(async () => trouble = await reminders.AnswerAsync(member, answer, until, ct))) return;
        if (trouble is { } found) await TurnAsync(id => new TroubleFound(id, found.Bike, found.Complaint), ct);
        else if (panel.IsAsking && panel.Keys.Same(panel.Asked) && await QuestionAsync(ct) is { } question) panel.Show(question with { Repeated = true });
    }

    private async Task TurnAsync(Func<string, Incoming> incoming, CancellationToken ct)
    {
        var taken = await GuardAsync(async () =>
        {
            await numbers.PrepareAsync(member.Id, ct);
            var before = await store.FindLastCaseAsync(member.Id, member.Place, ct);
            var after = await desk.HandleAsync(member.Id, member.Place, incoming(await NextEventAsync(ct)), ct);
            logger.Took(after.Id, after.Turn, after.Phase);
            if (before is { IsClosed: true } && before.Id != after.Id) screen.Say("The last trouble is closed, so I take this as a new one.");
        });
        if (taken) await SayUnsaidAsync(ct);
    }

    /// <returns>Whether it went well.</returns>
    private async Task<bool> GuardAsync(Func<Task> take)
    {
        try
        {
            await take();
            return true;
        }
        catch (Exception e) when (e is not (OperationCanceledException or StoreStoppedException))
        {
            // One bad turn must not end the conversation: nothing of it was kept, and the case stands as before it.
            logger.TurnFailed(e);
            screen.Say("Something went wrong on my side, not on yours. Nothing you told me before is lost; please say it in other words, or type bye.");
            return false;
        }
    }

    /// <summary>A line is a new event each time: named by the case and the turn that it will be, so that a replay after a crash is noticed.</summary>
    private async Task<string> NextEventAsync(CancellationToken ct)
    {
        var last = (await store.CasesOfAsync(member.Id, 1, ct)).FirstOrDefault();
        return last is null ? "first" : string.Create(CultureInfo.InvariantCulture, $"{last.Id}.{last.Turn + 1}");
    }

    /// <returns>Whether anything was waiting.</returns>
    private async Task<bool> SayUnsaidAsync(CancellationToken ct)
    {
        var said = false;
        while (await store.UnsaidAsync(member.Place, MostUnsaid, ct) is { IsEmpty: false } waiting)
        {
            panel.CoachSpeaks();
            foreach (var message in waiting) panel.Show(message.Card);
            await screen.FlushAsync(ct);
            foreach (var message in waiting) await store.MarkSaidAsync(message.Id, ct);
            said = true;
        }

        return said;
    }

    private async Task GreetAsync(CancellationToken ct)
    {
        panel.Clear();
        var question = await QuestionAsync(ct);
        if (question is not null || (await store.UnsaidAsync(member.Place, 1, ct)).Length > 0)
            screen.Say($"Hello {member.Shown}. We were here:");
        else
            panel.ShowAside(Coach.Welcome(member.Shown));

        // What a crash kept from being said comes first; the open question only if it was not among it.
        await SayUnsaidAsync(ct);
        if (question is not null && (panel.Keys.IsEmpty || !panel.Keys.Same(AnswerKeys.Of(question)))) panel.Show(question);
        await GuardAsync(() => reminders.LookAsync(member, ct));
        await GuardAsync(() => teaching.LookAsync(member, ct));
    }

    /// <returns>The coach's open question, or null.</returns>
    private async Task<Card?> QuestionAsync(CancellationToken ct)
    {
        var (open, bike) = await OpenCaseAsync(ct);
        return open is null ? null : CaseLook.OpenQuestion(rules.Knowledge, rules.Options, open, bike!, clock.GetUtcNow());
    }

    private async Task ShowBeliefAsync(CancellationToken ct)
    {
        var (open, bike) = await OpenCaseAsync(ct);
        panel.ShowAside(
            open is null
                ? new Card("What I think so far", [new TextBlock("No trouble is open. Tell me what the bike does.")], [])
                : CaseLook.Belief(rules.Knowledge, rules.Options, open, bike!, clock.GetUtcNow()));
    }

    private async Task<(Case? Case, BikeProfile? Bike)> OpenCaseAsync(CancellationToken ct)
    {
        if (await store.FindOpenCaseAsync(member.Id, member.Place, ct) is not { } open) return (null, null);
        return (open, await store.FindBikeAsync(open.Bike, ct) ?? BikeProfile.New(open.Bike, open.Member));
    }

    private async Task LookAtRulesAsync(CancellationToken ct)
    {
        if (await rules.LookAsync(ct) is not { } news) return;
        if (news.Outcome == ReloadOutcome.Taken) logger.RulesTaken(rules.Knowledge.Version);
        else logger.RulesKept(news.Problems.Length, rules.Knowledge.Version);
        screen.Say(string.Join('\n', news.Problems.Prepend(news.Line)));
    }
}
