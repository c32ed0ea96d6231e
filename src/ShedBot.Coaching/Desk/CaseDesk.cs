using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Desk;

/// <summary>
/// The shell around the coach, the same for every platform: reads the case, takes one turn at a time per member and place, keeps case, log and
/// what is to be said in one transaction. It does not speak: what is to be said waits in the store's outbox.
/// </summary>
/// <param name="coach">Asked for each turn, so that rules changed while running serve the next turn.</param>
/// <param name="newId">Hands out ids for new cases; the core draws no chance.</param>
public sealed class CaseDesk(IShedStore store, Func<Coach> coach, TimeProvider clock, Func<string> newId) : IDisposable
{
    /// <summary>How often a turn is taken anew because somebody else saved first.</summary>
    private const int MostTries = 5;

    /// <summary>So many cases of the member are looked through for an event that comes again.</summary>
    private const int MostEarlier = 10;

    /// <summary>So many members can be answered side by side; each member's turns come one after the other.</summary>
    private const int Gates = 64;

    private readonly ImmutableArray<SemaphoreSlim> gates = [.. Enumerable.Range(0, Gates).Select(_ => new SemaphoreSlim(1, 1))];

    /// <summary>Answers one event of a member. When this returns, the turn is safe on the disk, whatever happens to the process.</summary>
    /// <returns>The case after.</returns>
    public async Task<Case> HandleAsync(MemberId member, string place, Incoming incoming, CancellationToken ct)
    {
        var gate = gates[(int)((uint)string.GetHashCode(member.Value, StringComparison.Ordinal) % Gates)];
        await gate.WaitAsync(ct);
        try
        {
            for (var tries = 1; ; tries++)
            {
                try
                {
                    return await TakeAsync(member, place, incoming, ct);
                }
                catch (StaleSaveException) when (tries < MostTries)
                {
                    // Somebody else saved this case or bike since it was read: a turn is a function, so it is simply taken anew.
                }
            }
        }
        finally
        {
            gate.Release();
        }
    }

    public void Dispose()
    {
        foreach (var gate in gates) gate.Dispose();
    }

    private async Task<Case> TakeAsync(MemberId member, string place, Incoming incoming, CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        // A solved case can come back: a late press, or words that say so, belong to it.
        var found = await store.FindOpenCaseAsync(member, place, ct) ?? await store.FindLastCaseAsync(member, place, ct);
        if (found?.Handled.Contains(incoming.EventId) != true && await AnsweredInAsync(member, place, incoming, ct) is { } earlier) return earlier;
        var @case = found ?? NewCase(member, place, now);
        var bike = await BikeAsync(@case, ct);
        var turn = coach().Take(@case, bike, incoming, now);
        if (turn.OpensNew)
        {
            @case = NewCase(member, place, now) with { Bike = bike.Id };
            turn = coach().Take(@case, bike, incoming, now);
        }

        if (turn.Say.IsEmpty) return turn.Case;
        ImmutableArray<OutboxMessage> say =
        [
            .. turn.Say.Select((card, i) => new OutboxMessage($"{turn.Case.Id}.{turn.Case.Turn:D4}.{i}", turn.Case.Id, place, card, now, incoming.EventId)),
        ];
        await store.SaveAsync(new TurnSaved(turn.Case, ReferenceEquals(turn.Bike, bike) ? null : turn.Bike, turn.Outcome, say), ct);
        return turn.Case;
    }

    /// <summary>An event that comes again may belong to an earlier case of this place, with a newer one begun since.</summary>
    private async Task<Case?> AnsweredInAsync(MemberId member, string place, Incoming incoming, CancellationToken ct) =>
        (await store.CasesOfAsync(member, MostEarlier, ct)).FirstOrDefault(c => c.Place == place && c.Handled.Contains(incoming.EventId));

    private Case NewCase(MemberId member, string place, DateTimeOffset now) =>
        Case.New(new CaseId(newId()), member, new BikeId(member.Value + "/bike"), place, now);

    private async Task<BikeProfile> BikeAsync(Case @case, CancellationToken ct) =>
        await store.FindBikeAsync(@case.Bike, ct) ?? BikeProfile.New(@case.Bike, @case.Member);
}
