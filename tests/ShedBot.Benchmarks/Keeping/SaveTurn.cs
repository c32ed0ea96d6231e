using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using LiteDB;
using ShedBot.Benchmarks.Deciding;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Keeping;

/// <summary>Keeping one turn: case, log and the card to be said in one transaction; beside it the database alone with one document of the size of the case.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 30, runs: 300)]
public class SaveTurn
{
    private readonly string folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
    private LiteShedStore durable = null!, quick = null!;
    private LiteDatabase alone = null!;
    private ILiteCollection<BsonDocument> cases = null!;
    private Case @case = null!;
    private Card card = null!;
    private int saved;

    [GlobalSetup]
    public async Task Setup()
    {
        durable = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "durable.db") }, CancellationToken.None);
        quick = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "quick.db"), Durable = false }, CancellationToken.None);
        alone = new LiteDatabase(Path.Combine(folder, "alone.db"));
        cases = alone.GetCollection("cases");
        var coach = ClubRules.CoachOf(1);
        var turn = RecordedTurns.Of(coach, 12, 1)[^1];
        var taken = coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);
        (@case, card) = (taken.Case, taken.Say[^1]);
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await durable.DisposeAsync();
        await quick.DisposeAsync();
        alone.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Benchmark]
    public void DatabaseAlone() => cases.Insert(new BsonDocument
    {
        ["_id"] = ++saved,
        ["entries"] = new BsonArray(@case.Entries.Select(e => new BsonDocument { ["kind"] = e.Kind.ToString(), ["subject"] = e.Subject, ["value"] = e.Value, ["at"] = e.At.UtcDateTime })),
        ["card"] = CardJson.Write(card),
    });

    [Benchmark]
    public Task StoreNotDurable() => quick.SaveAsync(Next(), CancellationToken.None);

    [Benchmark]
    public Task StoreDurable() => durable.SaveAsync(Next(), CancellationToken.None);

    /// <summary>Every save is the first of a case of its own, so that none waits for the version of another.</summary>
    private TurnSaved Next()
    {
        var id = new CaseId(string.Create(CultureInfo.InvariantCulture, $"case-{++saved}"));
        return new TurnSaved(@case with { Id = id, Version = 1 }, null, null, [new OutboxMessage($"{id}-1-0", id, @case.Place, card, RecordedTurns.Noon)]);
    }
}
