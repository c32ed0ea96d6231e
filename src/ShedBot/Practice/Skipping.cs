using ShedBot.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Practice;

/// <summary>Moves the clock of the terminal on. Reminders that come on the way are shown in their order, each at its own time, as to a member who is away.</summary>
internal sealed class Skipping(RiderDesk desk, Logbook logbook, Reminders reminders, PracticeRules rules, IScreen screen, Speakers speakers, TimeProvider clock)
{
    private const int MostDays = 366;

    /// <param name="words">How far; empty: to the next reminder, and without reminders to the next due day.</param>
    public async Task ToAsync(MemberName member, string words, CancellationToken ct)
    {
        if (clock is not FrozenClock frozen)
        {
            screen.Say("This is the real clock, and it cannot be moved. Start practice with --now 2026-05-01T18:00 for one that can.");
            return;
        }

        var (now, speaker) = (clock.GetUtcNow(), await speakers.OfAsync(member, ct));
        if (words.Length == 0 && await desk.NextMessageAsync(member.Id, now, now.AddDays(MostDays), ct) is { } next)
        {
            frozen.MoveTo(next);
            await reminders.LookAsync(member, ct);
            return;
        }

        var moved = LookingAhead.To(words, await logbook.BikeAsync(member, ct), rules.Knowledge, speaker, now);
        if (moved.Value is { } moment)
        {
            while (await desk.NextMessageAsync(member.Id, clock.GetUtcNow(), moment.At, ct) is { } at)
            {
                frozen.MoveTo(at);
                await reminders.LookAsync(member, ct);
            }

            frozen.MoveTo(moment.At);
        }

        screen.Say(moved.Refused?.Say ?? moved.Must.Says);
    }
}
