using System.Collections.Immutable;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Moves;

public enum RoundOutcome
{
    /// <summary>Nothing had to be looked over, or others were quicker.</summary>
    NotDue,

    /// <summary>The cases were looked over, and there is nothing new to tell.</summary>
    NothingNew,

    /// <summary>A proposal waits for moderators.</summary>
    Proposed,

    /// <summary>Numbers went live by themselves, as the club has chosen.</summary>
    Published,

    /// <summary>What was learnt was counted anew, because cases are gone.</summary>
    CountedAnew,
}

/// <summary>What came of a round over a club's cases.</summary>
/// <param name="Title">What is new, in a few words for moderators; empty when nothing is.</param>
/// <param name="Edition">The edition that was published; null when none was.</param>
public sealed record RoundNews(RoundOutcome Outcome, string Title = "", int? Edition = null);

/// <summary>
/// Looks over a club's cases without anybody asking. All that a round changes is kept in one transaction that asks whether the rules and the notes are still
/// those it read: a second process, or one that begins again after a death, does it once.
/// </summary>
/// <param name="trying">Told before a trial that takes its time.</param>
internal sealed class LearningRounds(ITeachingStore store, RulesNowReader reader, ITrials trials, Func<Task> trying)
{
    public async Task<RoundNews> RoundAsync(ClubId club, DateTimeOffset now, CancellationToken ct)
    {
        try
        {
            var (settings, book) = (await store.TeachingSettingsAsync(club, ct), await store.LearningBookAsync(club, ct));
            var ripe = await store.ClosedMarkAsync(club, now.AddDays(-LearningLimits.Of(settings).WaitDays), ct);
            var kind = RoundPlan.Of(settings, book, (await store.ClosedMarkAsync(club, now, ct)).Count, ripe, now);
            if (kind == RoundKind.None) return new RoundNews(RoundOutcome.NotDue);
            var act = new TeachAct(store, await reader.OfAsync(club, ct), RoundActs.Itself(club), now, ct);
            var work = await CountWork.ReadAsync(store, act.Rules, club, now, ct);
            return kind == RoundKind.CountAnew
                ? await AnewAsync(act, book, work)
                : await LookAsync(act, settings.Learning, book with { LookedAt = now, Looked = RoundPlan.Looked(settings, ripe) }, work);
        }
        catch (StaleSaveException)
        {
            // Somebody published, chose, or did the very same: the next round sees what is left to do.
            return new RoundNews(RoundOutcome.NotDue);
        }
    }

    private static async Task<RoundNews> AnewAsync(TeachAct act, LearningBook book, CountWork work)
    {
        var report = await work.CountAnewAsync(LearntText.Read(book.Anew).Learnt ?? Learnt.Nothing, act.Ct);
        return new RoundNews(RoundOutcome.CountedAnew, "What was learnt was counted anew, because cases are gone.", await RoundActs.AnewAsync(act, book, report.Learnt));
    }

    private async Task<RoundNews> LookAsync(TeachAct act, LearningMode mode, LearningBook book, CountWork work)
    {
        var report = await work.CountAsync(act.Ct);
        var counted = report.Learnt;
        var open = await RoundActs.OpenAsync(act);
        var before = open is null || await LearnActs.StaleAsync(act, open) is not null ? null : CountedNumbers.Read(open);
        var step = RoundPlan.Of(
            mode,
            LearntSteps.Between(work.Now, counted, work.Unlearnt, work.Limits),
            open is not null,
            before,
            before is null ? [] : LearntSteps.BetweenCounts(before.Counted, counted, work.Unlearnt, work.Limits));
        var numbers = CountedNumbers.Of(work, report);
        // Kept by an earlier version, or counted anew: nothing is left that moderators would take.
        if (open is not null && step is RoundStep.Keep or RoundStep.Propose && (numbers with { Out = CountedNumbers.Read(open)!.Out }).IsAllOut)
        {
            await RoundActs.WithdrawAsync(act, book.Quiet(work.Cases.Length), open, allOut: true);
            return new RoundNews(RoundOutcome.NothingNew);
        }

        switch (step)
        {
            case RoundStep.Withdraw:
                await RoundActs.WithdrawAsync(act, book, open!, allOut: false);
                return new RoundNews(RoundOutcome.NothingNew);
            case RoundStep.Propose:
                return Proposed(await RoundActs.ProposeAsync(act, book, open, work, numbers, null));
            case RoundStep.Publish:
                return await TryAsync(act, book, open, work, report, numbers);
            default:
                await RoundActs.NoteAsync(act, book);
                return new RoundNews(RoundOutcome.NothingNew);
        }
    }

    /// <summary>Nothing goes live untried: what is worse, or less safe, is for moderators to decide.</summary>
    private async Task<RoundNews> TryAsync(TeachAct act, LearningBook book, Proposal? open, CountWork work, LearningReport report, CountedNumbers numbers)
    {
        var changed = act.Rules.Lay("", LearntText.Write(report.Learnt)).Knowledge;
        if (changed is null) return Proposed(await RoundActs.ProposeAsync(act, book, open, work, numbers with { Why = "It does not fit the rules as they are, so it did not go live by itself." }, null));
        ImmutableArray<string> weaker = [.. LayerSafety.Check(act.Rules.Base.Knowledge!, changed).Select(w => w.ToString())];
        if (weaker.IsEmpty) await trying();
        var tried = weaker.IsEmpty ? await trials.TryAsync(act.Rules.Knowledge, changed, work.Cases, null, act.Ct) : new TriedOut("", weaker);
        // The trial took its time: the club may have chosen otherwise.
        var settings = await store.TeachingSettingsAsync(act.Club, act.Ct);
        if (settings.Learning != LearningMode.Automatic || await work.Basis.WhyStaleAsync(store, await reader.OfAsync(act.Club, act.Ct), settings, act.Ct) is not null) return new RoundNews(RoundOutcome.NotDue);
        if (tried.Lost.IsEmpty && !tried.IsWorse)
        {
            var edition = await RoundActs.PublishAsync(act, book, open, numbers);
            return new RoundNews(RoundOutcome.Published, MoveCards.TitleOf(numbers.Numbers.Length), edition);
        }

        var why = tried.Lost.IsEmpty
            ? "It did not go live by itself, because its trial came out worse. You decide."
            : $"It did not go live by itself, because it would make the coach less safe: {tried.Lost[0]}";
        var trial = new ProposalTrial("", act.Rules.Edition, act.Rules.BaseVersion, tried.Report, tried.Lost.IsEmpty, act.At);
        return Proposed(await RoundActs.ProposeAsync(act, book, open, work, numbers with { Why = why }, trial));
    }

    private static RoundNews Proposed(Proposal proposal) => new(RoundOutcome.Proposed, proposal.Title);
}
