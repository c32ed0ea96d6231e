using System.Collections.Immutable;
using LiteDB;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Storage;
using ShedBot.Storage.Documents;

namespace ShedBot.Benchmarks.Reminding;

/// <summary>A data file with invented riders, each with a bike, written in bulk; the store reads it from end to end before it is measured, so it is as if each had been saved.</summary>
/// <param name="Kept">Riders in it.</param>
/// <param name="Due">Of them, those whose time has come.</param>
public sealed record KeptRiders(int Kept, int Due)
{
    /// <summary>Documents written in one transaction.</summary>
    private const int Batch = 5_000;

    /// <summary>Due dates that each was told of.</summary>
    private const int Told = 5;

    public static readonly DateTimeOffset Now = new(2026, 5, 2, 18, 0, 0, TimeSpan.Zero);

    private static readonly ImmutableArray<RiddenDay> Days =
        [.. Enumerable.Range(0, 8).Select(d => new RiddenDay(new LocalDate(2026, 4, 2).PlusDays(3 * d), 10 + d, null, Weather.Dry))];

    public override string ToString() => FormattableString.Invariant($"{Due:N0} of {Kept:N0}");

    /// <returns>The length of the file, bytes.</returns>
    public async Task<long> MakeAsync(string path)
    {
        await (await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, CancellationToken.None)).DisposeAsync();
        using (var db = new LiteDatabase(new ConnectionString { Filename = path, Connection = ConnectionType.Direct }))
        {
            var (riders, bikes) = (db.GetCollection(RiderDocument.Collection), db.GetCollection(BikeDocument.Collection));
            for (var from = 0; from < Kept; from += Batch)
            {
                var some = Enumerable.Range(from, Math.Min(Batch, Kept - from)).ToList();
                riders.InsertBulk(some.Select(i => RiderDocument.ToBson(RiderAt(i))), Batch);
                bikes.InsertBulk(some.Select(i => BikeDocument.ToBson(BikeOf(MemberAt(i)))), Batch);
                db.Checkpoint();
            }
        }

        return new FileInfo(path).Length;
    }

    /// <summary>Those who are due are spread over all of the file, as they would be.</summary>
    private Rider RiderAt(int i) => Rider.New(MemberAt(i)) with
    {
        Consent = Consent.Given,
        Told = [.. Enumerable.Range(0, Told).Select(t => new Told($"{BikeId.Of(MemberAt(i))}|grease-bar-ball-cam|grease-bar-ball-cam@2026-04-{t + 1:D2}", new LocalDate(2026, 4, t + 1)))],
        NextLook = i % (Kept / Due) == 0 ? Now.AddMinutes(-(i % 600)) : Now.AddMinutes(1 + (i % 9_000)),
        Version = 1,
    };

    private static MemberId MemberAt(int i) => new($"club-{i % 100}/{i}");

    private static BikeProfile BikeOf(MemberId member) => BikeProfile.New(BikeId.Of(member), member) with { Riding = RidingLog.None with { Days = Days }, Version = 1 };
}
