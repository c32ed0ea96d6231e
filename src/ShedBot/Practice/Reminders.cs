using Microsoft.Extensions.Logging;
using NodaTime;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Practice;

/// <summary>Reminders at the practice terminal: they come between two lines, as a message of ShedBot's own would.</summary>
internal sealed class Reminders(IShedStore store, RiderDesk desk, PracticeRules rules, IScreen screen, Panel panel, Speakers speakers, TimeProvider clock, ILogger logger)
{
    private const int MostUnsaid = 100;

    /// <summary>Less than this names no task: "no", "how", "stop".</summary>
    private const int LeastName = 5;

    /// <summary>Looks at everybody whose time has come, and shows what waits for the member.</summary>
    public async Task LookAsync(MemberName member, CancellationToken ct)
    {
        foreach (var (_, why) in (await desk.RoundAsync(clock.GetUtcNow(), ct)).Failed) logger.LookFailed(why);
        while (await store.UnsaidAsync(Decision.PlaceOf(member.Id), MostUnsaid, ct) is { IsEmpty: false } waiting)
        {
            var speaker = await speakers.OfAsync(member, ct);
            foreach (var message in waiting)
            {
                screen.Say($"ShedBot writes to you on {LookingAhead.Clock(message.DecidedAt, speaker)}:");
                panel.Show(message.Card);
            }

            await screen.FlushAsync(ct);
            foreach (var message in waiting) await store.MarkSaidAsync(message.Id, ct);
        }
    }

    /// <summary>What is told beside an entry: once, the question whether to remind.</summary>
    public async Task BesideAsync(MemberName member, CancellationToken ct)
    {
        if (await desk.BesideAsync(member.Id, mayAsk: true, clock.GetUtcNow(), ct) is { } card) panel.Show(card);
    }

    public Task HeardAsync(MemberName member, CancellationToken ct) => desk.HeardAsync(member.Id, clock.GetUtcNow(), ct);

    /// <returns>Null when the line is no wish about reminders or settings.</returns>
    public Result<RiderRequest>? Read(string line) => RiderWords.Read(line, rules.Knowledge);

    /// <returns>What a line answers to the reminder that is shown: what stands on an option, or the name of a task; null for anything else.</returns>
    public NudgeAnswer? Answered(string line)
    {
        if (panel.Named(line) is { } option) return NudgeAnswer.Read(option.Id);
        var few = panel.IsAsking || line.Trim().Length < LeastName;
        var task = TaskWords.Exactly(rules.Knowledge, line) ?? (few || TaskWords.Matching(rules.Knowledge, line) is not [var only] ? null : only);
        return task is null ? null : panel.LookAt(task.Id);
    }

    public async Task TakeAsync(MemberName member, Result<RiderRequest> read, CancellationToken ct)
    {
        if (read.Refused is { } refused)
        {
            screen.Say(refused.Say);
            return;
        }

        // A number means what it meant before: nobody stops all reminders who wanted to answer one.
        panel.ShowAside(await desk.HandleAsync(member.Id, read.Must, clock.GetUtcNow(), ct));
        if (read.Must is ShowReminders) screen.Say("To change it: remind me at 18:00, quiet 21:00 to 8:00, my zone Europe/Lisbon, my units miles, stop reminders.");
    }

    /// <param name="until">With "not riding": the first day of riding again; null: till they say.</param>
    /// <returns>The trouble to open a case with, or null.</returns>
    public async Task<TroubleShown?> AnswerAsync(MemberName member, NudgeAnswer answer, LocalDate? until, CancellationToken ct)
    {
        var taken = await desk.AnswerAsync(member.Id, answer, clock.GetUtcNow(), ct, until);
        panel.Answered();
        // The coach says which trouble it understood, with its first question.
        if (taken.Opens is { } trouble) return trouble;
        panel.Show(taken.Say);
        if (taken.Say.Options.IsEmpty && panel.Left(answer) is { } left) panel.Show(left);
        return null;
    }
}
