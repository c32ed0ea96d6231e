using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Desk;

/// <summary>
/// The shell around the coach, the same for every platform: reads the case, takes one turn at a time per member and place, keeps case, log and
/// what is to be said in one transaction. It does not speak: what is to be said waits in the store's outbox.
/// </summary>
/// <param name="coaches">Asked for each turn, so that what a club has published serves the next one.</param>
/// <param name="newId">Hands out ids for new cases; the core draws no chance.</param>
/// <param name="otherBike">How a member with several bikes begins a case about another one than is in use.</param>
public sealed class CaseDesk(
    IShedStore store, IRiderStore riders, ICoaches coaches, TimeProvider clock, Func<string> newId, string otherBike = "leave this, choose that bike, and tell me again") : IDisposable
{
    /// <summary>So many cases of the member are looked through for an event that comes again.</summary>
    private const int MostEarlier = 10;

    private readonly MemberGates gates = new();

    /// <summary>Answers one event of a member. When this returns, the turn is safe on the disk, whatever happens to the process.</summary>
    /// <param name="about">The bike that a case which begins is about; null: the one that came along, else the one in use.</param>
    /// <returns>The case after.</returns>
    public Task<Case> HandleAsync(MemberId member, string place, Incoming incoming, CancellationToken ct, BikeId? about = null) =>
        gates.AloneAsync(member, () => TakeAsync(member, place, incoming, about, ct), ct);

    public void Dispose() => gates.Dispose();

    private async Task<Case> TakeAsync(MemberId member, string place, Incoming incoming, BikeId? about, CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        // A solved case can come back: a late press, or words that say so, belong to it.
        var found = await store.FindOpenCaseAsync(member, place, ct) ?? await store.FindLastCaseAsync(member, place, ct);
        if (found?.Handled.Contains(incoming.EventId) != true && await AnsweredInAsync(member, place, incoming, ct) is { } earlier) return earlier;
        about ??= (incoming as TroubleFound)?.Bike;
        var @case = found ?? NewCase(member, place, now, about ?? await InUseAsync(member, null, ct));
        var bike = await BikeAsync(@case, ct);
        var coach = await coaches.OfAsync(member, ct);
        var turn = coach.Take(@case, bike, incoming, now);
        if (turn.OpensNew)
        {
            @case = NewCase(member, place, now, about ?? await InUseAsync(member, bike.Id, ct));
            bike = await BikeAsync(@case, ct);
            turn = coach.Take(@case, bike, incoming, now);
        }

        if (turn.Say.IsEmpty) return turn.Case;
        ImmutableArray<OutboxMessage> say =
        [
            .. (await OpeningAsync(turn, bike, ct)).Select((card, i) => new OutboxMessage($"{turn.Case.Id}.{turn.Case.Turn:D4}.{i}", turn.Case.Id, place, card, now, incoming.EventId)),
        ];
        var changed = ReferenceEquals(turn.Bike, bike) ? null : turn.Bike;
        await store.SaveAsync(new TurnSaved(turn.Case, changed, turn.Outcome, say, await HeardAsync(member, changed is not null, now, ct), turn.Unheard), ct);
        return turn.Case;
    }

    /// <summary>A turn is a sign of life; and what it changed on the bike can change what is due.</summary>
    private async Task<Rider?> HeardAsync(MemberId member, bool bikeChanged, DateTimeOffset now, CancellationToken ct) =>
        await riders.FindRiderAsync(member, ct) is { Consent: Consent.Given } rider && (bikeChanged || rider.Unanswered > 0) ? Nudger.Heard(rider, now) : null;

    /// <summary>An event that comes again may belong to an earlier case of this place, with a newer one begun since.</summary>
    private async Task<Case?> AnsweredInAsync(MemberId member, string place, Incoming incoming, CancellationToken ct) =>
        (await store.CasesOfAsync(member, MostEarlier, ct)).FirstOrDefault(c => c.Place == place && c.Handled.Contains(incoming.EventId));

    /// <param name="before">The bike of the case before in this place, or null: talk goes on of it unless the member has chosen one.</param>
    private async Task<BikeId> InUseAsync(MemberId member, BikeId? before, CancellationToken ct)
    {
        var (rider, bikes) = (await riders.FindRiderAsync(member, ct) ?? Rider.New(member), await store.BikesOfAsync(member, ct));
        return before is { } same && rider.Bike is null && (bikes.IsEmpty || bikes.Any(b => b.Id == same)) ? same : Garage.InUse(rider, bikes).Id;
    }

    /// <summary>Where a member has several bikes, a case that begins says which one it takes the trouble to be of.</summary>
    private async Task<ImmutableArray<Card>> OpeningAsync(Turn turn, BikeProfile bike, CancellationToken ct)
    {
        // An emergency comes alone.
        if (turn.Case is { Turn: > 1 } or { Phase: CasePhase.Stopped } or { Open.Kind: AskKind.AllSafe } || (await store.BikesOfAsync(turn.Case.Member, ct)).Length < 2) return turn.Say;
        var which = new TextBlock($"I take it to be about {Garage.NameOf(bike)}. If it is another bike: {otherBike}.");
        return turn.Say.SetItem(0, turn.Say[0] with { Blocks = turn.Say[0].Blocks.Add(which) });
    }

    private Case NewCase(MemberId member, string place, DateTimeOffset now, BikeId bike) => Case.New(new CaseId(newId()), member, bike, place, now);

    private async Task<BikeProfile> BikeAsync(Case @case, CancellationToken ct) =>
        await store.FindBikeAsync(@case.Bike, ct) ?? BikeProfile.New(@case.Bike, @case.Member);
}
