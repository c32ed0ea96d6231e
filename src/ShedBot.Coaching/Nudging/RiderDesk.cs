using System.Collections.Concurrent;
using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>
/// The shell around reminders and members' settings, the same for every platform: reads the member and their bikes, takes one thing at a time for each
/// member, keeps what changed and what is to be said in one transaction. It does not speak: what is to be said waits in the outbox, in
/// <see cref="Decision.PlaceOf"/>.
/// </summary>
/// <param name="coaches">Asked each time, so that what a club has published serves the next request.</param>
/// <param name="zone">The IANA zone of the member's club.</param>
public sealed class RiderDesk(
    IShedStore store, IRiderStore riders, ICoaches coaches, Func<MemberId, CancellationToken, ValueTask<string>> zone) : IDisposable
{
    private const int MostRead = 500, MostAllRead = 10_000, SideBySide = 8;

    private readonly MemberGates gates = new();

    public async Task<Rider> FindAsync(MemberId member, CancellationToken ct) => await riders.FindRiderAsync(member, ct) ?? Rider.New(member);

    /// <summary>Those whose time has come, longest waiting first.</summary>
    /// <param name="limit">1 to 10,000.</param>
    public Task<ImmutableArray<Rider>> DueAsync(DateTimeOffset now, int limit, CancellationToken ct) => riders.DueRidersAsync(now, limit, ct);

    /// <summary>Looks at everybody whose time has come. One who cannot be looked at keeps nobody else waiting.</summary>
    /// <param name="among">Who may be looked at just now; null: everybody.</param>
    public async Task<ReminderRound> RoundAsync(DateTimeOffset now, CancellationToken ct, Func<MemberId, bool>? among = null)
    {
        var (told, failed, seen) = (new ConcurrentBag<MemberId>(), new ConcurrentBag<(MemberId, Exception)>(), new HashSet<MemberId>());
        while (true)
        {
            var due = await riders.DueRidersAsync(now, Math.Min(MostAllRead, seen.Count + MostRead), ct);
            var next = due.Select(r => r.Member).Where(seen.Add).ToList();
            if (next.Count == 0) return new ReminderRound([.. told], [.. failed]);
            var options = new ParallelOptions { MaxDegreeOfParallelism = SideBySide, CancellationToken = ct };
            await Parallel.ForEachAsync(next.Where(m => among?.Invoke(m) != false), options, async (member, stop) =>
            {
                try
                {
                    if (await gates.AloneAsync(member, () => LookAsync(member, now, stop), stop)) told.Add(member);
                }
                catch (Exception e) when (e is not OperationCanceledException)
                {
                    failed.Add((member, e));
                }
            });
        }
    }

    /// <summary>When the member will be written to if nothing happens until then, no further than a moment; null: not till then. Changes nothing.</summary>
    public async Task<DateTimeOffset?> NextMessageAsync(MemberId member, DateTimeOffset from, DateTimeOffset to, CancellationToken ct) =>
        Foresight.Next(await FindAsync(member, ct), await store.BikesOfAsync(member, ct), await RulesAsync(member, ct), await zone(member, ct), from, to);

    /// <summary>Takes an answer to a reminder. The same answer again does no more than once.</summary>
    /// <param name="until">With <see cref="NudgeVerb.NotRiding"/>: the first day of riding again; null: till they say.</param>
    public Task<Taken> AnswerAsync(MemberId member, NudgeAnswer answer, DateTimeOffset at, CancellationToken ct, LocalDate? until = null) => gates.AloneAsync(
        member,
        async () =>
        {
            var (rider, bikes) = (await FindAsync(member, ct), await store.BikesOfAsync(member, ct));
            var taken = Taking.Take(rider, bikes, answer, await RulesAsync(member, ct), await zone(member, ct), at, until);
            await riders.SaveRiderAsync(taken.Rider, taken.Bikes, [], ct);
            return taken;
        },
        ct);

    /// <summary>Takes the answer that a member is not riding.</summary>
    /// <param name="answer">What was pressed.</param>
    public Task<Taken> RestAsync(MemberId member, NudgeAnswer answer, RestEntry rest, DateTimeOffset at, CancellationToken ct) =>
        AnswerAsync(member, answer with { Verb = NudgeVerb.NotRiding }, at, ct, rest.Until);

    /// <summary>How the digest that is answered stands by now.</summary>
    /// <returns>Null when nothing that it told is due any more.</returns>
    public async Task<Card?> StandingAsync(MemberId member, NudgeAnswer answer, DateTimeOffset at, CancellationToken ct) => Standing.Of(
        await FindAsync(member, ct), await store.BikesOfAsync(member, ct), answer.Digest, await RulesAsync(member, ct), await zone(member, ct), at);

    /// <summary>Takes a wish about reminders or settings.</summary>
    public Task<Card> HandleAsync(MemberId member, RiderRequest request, DateTimeOffset at, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            var (rider, here) = (await FindAsync(member, ct), await zone(member, ct));
            if (request is ShowReminders) return RiderCards.Of(rider, await RulesAsync(member, ct), here, at);
            var wished = RiderWishes.Take(rider, request, at);
            if (wished.Refused is { } refused) return NudgeCards.Said("Not changed", refused.Say);
            await riders.SaveRiderAsync(wished.Must, [], [], ct);
            return RiderCards.Of(wished.Must, await RulesAsync(member, ct), here, at);
        },
        ct);

    /// <summary>What is shown beside the answer to a command, to the member alone: a note that a reminder did not reach them, or, once, the question whether to remind.</summary>
    /// <param name="mayAsk">True where something was noted that can fall due.</param>
    /// <returns>Null when there is nothing, which is most of the time.</returns>
    public Task<Card?> BesideAsync(MemberId member, bool mayAsk, DateTimeOffset at, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            var (rider, here) = (await FindAsync(member, ct), await zone(member, ct));
            var (after, card) = Fallback.AtNextCommand(rider, here, at);
            if (card is null && mayAsk && Taking.AskOnce(rider, here, at) is { } asked) (after, card) = (asked.Rider, asked.Say);
            if (card is not null) await riders.SaveRiderAsync(after, [], [], ct);
            return card;
        },
        ct);

    /// <summary>A sign of life that changes nothing else. What is said while reminders go well is not written down.</summary>
    public Task HeardAsync(MemberId member, DateTimeOffset at, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            if (await riders.FindRiderAsync(member, ct) is not { Unanswered: > 0 } rider) return false;
            await riders.SaveRiderAsync(Nudger.Heard(rider, at), [], [], ct);
            return true;
        },
        ct);

    /// <summary>The platform did not let a message through. Whether a mention is made or a note is left is decided once.</summary>
    public Task RefusedAsync(MemberId member, DateTimeOffset now, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            if (await riders.FindRiderAsync(member, ct) is not { Refused: false } rider) return false;
            var (after, mention) = Fallback.Refused(rider, await zone(member, ct), now);
            await riders.SaveRiderAsync(after, [], mention is null ? [] : [Fallback.Outbox(after, mention, now)], ct);
            return true;
        },
        ct);

    /// <summary>A message to the member went out; to be called before it is marked as said.</summary>
    public Task WentOutAsync(MemberId member, DateTimeOffset at, CancellationToken ct) => ChangeAsync(member, async r => WentOut.Note(r, await zone(member, ct), at), ct);

    /// <summary>The mention in the place that they chose could not be made.</summary>
    public Task NotMentionedAsync(MemberId member, CancellationToken ct) => ChangeAsync(member, r => Task.FromResult(Fallback.NotMentioned(r)), ct);

    /// <summary>After a restore from a backup: what the chat's newest reminder told, or one before it, is not told again.</summary>
    /// <param name="lastMessage">When the newest reminder in the chat with the member was sent.</param>
    public Task CatchUpAsync(MemberId member, DateTimeOffset lastMessage, DateTimeOffset now, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            if (await riders.FindRiderAsync(member, ct) is not { } rider) return false;
            var after = Nudger.CatchUp(rider, await store.BikesOfAsync(member, ct), await RulesAsync(member, ct), await zone(member, ct), lastMessage, now);
            if (after == rider) return false;
            await riders.SaveRiderAsync(after, [], [], ct);
            return true;
        },
        ct);

    /// <summary>Whether a message may go out to the member now. What waited while the chat could not be reached waits on through quiet hours.</summary>
    public async Task<bool> MaySendAsync(MemberId member, DateTimeOffset now, CancellationToken ct) =>
        !new RiderClock(await FindAsync(member, ct), await zone(member, ct), now).IsQuiet;

    public void Dispose() => gates.Dispose();

    private async ValueTask<KnowledgeBase> RulesAsync(MemberId member, CancellationToken ct) => (await coaches.OfAsync(member, ct)).Knowledge;

    /// <summary>Saves only what changed.</summary>
    private Task<bool> ChangeAsync(MemberId member, Func<Rider, Task<Rider>> change, CancellationToken ct) => gates.AloneAsync(
        member,
        async () =>
        {
            if (await riders.FindRiderAsync(member, ct) is not { } rider || await change(rider) is var after && after == rider) return false;
            await riders.SaveRiderAsync(after, [], [], ct);
            return true;
        },
        ct);

    /// <returns>Whether a message waits for them now.</returns>
    private async Task<bool> LookAsync(MemberId member, DateTimeOffset now, CancellationToken ct)
    {
        if (await riders.FindRiderAsync(member, ct) is not { NextLook: { } look } rider || look > now) return false;
        // While the chat cannot be reached nothing is heaped up: one message waits, and it is decided anew once it is out.
        if (await store.UnsaidAsync(Decision.PlaceOf(member), 1, ct) is { IsEmpty: false }) return true;
        var decided = Nudger.Decide(rider, await store.BikesOfAsync(member, ct), await RulesAsync(member, ct), await zone(member, ct), now);
        await riders.SaveRiderAsync(decided.After, [], decided.Outbox(), ct);
        return decided.Say is not null;
    }
}
