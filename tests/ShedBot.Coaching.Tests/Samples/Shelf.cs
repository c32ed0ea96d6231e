using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Tests.Samples;

/// <summary>A store in memory that keeps to the contract: a save expects the version it was read with, and is kept as a whole or not at all.</summary>
internal sealed class Shelf : IShedStore, IRiderStore
{
    private readonly Dictionary<CaseId, Case> cases = [];

    public Dictionary<BikeId, BikeProfile> Bikes { get; } = [];

    public Dictionary<MemberId, Rider> Riders { get; } = [];

    public List<OutboxMessage> Unsaid { get; } = [];

    public int Saves { get; private set; }

    /// <summary>Done once before the next save, as somebody else's save would be.</summary>
    public Action? Meanwhile { get; set; }

    /// <summary>Members whose record cannot be saved.</summary>
    public HashSet<MemberId> Broken { get; } = [];

    public Task<Case?> FindCaseAsync(CaseId id, CancellationToken ct) => Task.FromResult(cases.GetValueOrDefault(id));

    public Task<Case?> FindOpenCaseAsync(MemberId member, string place, CancellationToken ct) =>
        Task.FromResult(cases.Values.Where(c => c.Member == member && c.Place == place && !c.IsClosed).MaxBy(c => c.LastTurnAt));

    public Task<Case?> FindLastCaseAsync(MemberId member, string place, CancellationToken ct) =>
        Task.FromResult(cases.Values.Where(c => c.Member == member && c.Place == place).MaxBy(c => c.LastTurnAt));

    public Task<ImmutableArray<Case>> CasesOfAsync(MemberId member, int limit, CancellationToken ct) =>
        Task.FromResult(cases.Values.Where(c => c.Member == member).OrderByDescending(c => c.LastTurnAt).Take(limit).ToImmutableArray());

    public Task<BikeProfile?> FindBikeAsync(BikeId id, CancellationToken ct) => Task.FromResult(Bikes.GetValueOrDefault(id));

    public Task<ImmutableArray<BikeProfile>> BikesOfAsync(MemberId member, CancellationToken ct) =>
        Task.FromResult(Bikes.Values.Where(b => b.Owner == member).OrderBy(b => b.Id.Value, StringComparer.Ordinal).ToImmutableArray());

    public Task<ImmutableArray<OutboxMessage>> UnsaidAsync(string place, int limit, CancellationToken ct) =>
        Task.FromResult(Unsaid.Where(m => m.Place == place).Take(limit).ToImmutableArray());

    public Task<ImmutableArray<Outcome>> OutcomesAsync(int limit, CancellationToken ct) => Task.FromResult(ImmutableArray<Outcome>.Empty);

    public Task<Rider?> FindRiderAsync(MemberId member, CancellationToken ct) => Task.FromResult(Riders.GetValueOrDefault(member));

    public Task<ImmutableArray<Rider>> DueRidersAsync(DateTimeOffset now, int limit, CancellationToken ct)
    {
        lock (Riders) return Task.FromResult(Riders.Values.Where(r => r.NextLook <= now).OrderBy(r => r.NextLook).Take(limit).ToImmutableArray());
    }

    public Task MarkSaidAsync(string outboxId, CancellationToken ct)
    {
        Unsaid.RemoveAll(m => m.Id == outboxId);
        return Task.CompletedTask;
    }

    public Task SaveAsync(TurnSaved turn, CancellationToken ct) => Keep(turn.Case, turn.Owner, turn.Bike is null ? [] : [turn.Bike], turn.Say);

    public Task SaveBikeAsync(BikeProfile bike, CancellationToken ct) => Keep(null, null, [bike], []);

    public Task SaveRiderAsync(Rider rider, ImmutableArray<BikeProfile> bikes, ImmutableArray<OutboxMessage> say, CancellationToken ct) => Keep(null, rider, bikes, say);

    public async Task RemoveBikeAsync(Rider owner, BikeProfile bike, CancellationToken ct)
    {
        if (Bikes.GetValueOrDefault(bike.Id)?.Version != bike.Version) throw new StaleSaveException("The bike");
        await Keep(null, owner, [], []);
        Bikes.Remove(bike.Id);
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private Task Keep(Case? @case, Rider? rider, ImmutableArray<BikeProfile> bikes, ImmutableArray<OutboxMessage> say)
    {
        lock (Riders)
        {
            var meanwhile = Meanwhile;
            Meanwhile = null;
            meanwhile?.Invoke();
            if (rider is not null && Broken.Contains(rider.Member)) throw new InvalidOperationException("The disk is full.");
            if (@case is not null && (cases.GetValueOrDefault(@case.Id)?.Version ?? 0) + 1 != @case.Version) throw new StaleSaveException("The case");
            if (rider is not null && (Riders.GetValueOrDefault(rider.Member)?.Version ?? 0) + 1 != rider.Version) throw new StaleSaveException("The rider");
            if (bikes.Any(b => (Bikes.GetValueOrDefault(b.Id)?.Version ?? 0) + 1 != b.Version)) throw new StaleSaveException("The bike");
            if (@case is not null) cases[@case.Id] = @case;
            if (rider is not null) Riders[rider.Member] = rider;
            foreach (var bike in bikes) Bikes[bike.Id] = bike;
            Unsaid.AddRange(say.Where(m => Unsaid.All(u => u.Id != m.Id)));
            Saves++;
            return Task.CompletedTask;
        }
    }
}
