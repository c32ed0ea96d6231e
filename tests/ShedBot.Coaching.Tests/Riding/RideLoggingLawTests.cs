using CsCheck;
using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

/// <summary>Laws of the log, on any entries.</summary>
public sealed class RideLoggingLawTests
{
    private static readonly LocalDate Today = new(2026, 5, 3);
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);

    private static readonly Gen<double?> Amount = Gen.OneOf(Gen.Const((double?)null), Gen.Int[12, 12_000].Select(i => (double?)(i / 1000.0)));

    private static readonly Gen<RiddenDay> Ride =
        Gen.Select(Gen.Int[0, 40], Amount, Amount, Gen.Enum<Weather>(), (ago, km, hours, weather) => new RiddenDay(Today.PlusDays(-ago), km, hours / 12, weather));

    private static readonly Gen<RidingBreak> Rest = Gen.Select(Gen.Int[0, 40], Gen.Int[1, 20], Gen.Bool, (ago, days, open) =>
        new RidingBreak(Today.PlusDays(-ago), open ? null : Today.PlusDays(days - ago)));

    private static readonly Gen<Func<RidingLog, RidingLog>> Entry = Gen.OneOf(
        Ride.Select(r => (Func<RidingLog, RidingLog>)(l => Or(l, l.Log(r, Today, null, Noon)))),
        Rest.Select(b => (Func<RidingLog, RidingLog>)(l => Or(l, l.Break(b.From, b.Until, Today, Noon)))),
        Gen.Double[0.5, 7].Select(d => (Func<RidingLog, RidingLog>)(l => Or(l, l.StatePace(new StatedPace(d, null, null, Today), Noon)))));

    [Fact]
    public void Undo_AnyEntryOnAnyLog_Restores() => Gen.Select(Entry.Array[0, 15], Ride, Rest, Gen.Bool).Sample((entries, ride, rest, rides) =>
    {
        var before = entries.Aggregate(RidingLog.None, (l, e) => e(l));
        var after = rides ? before.Log(ride, Today, null, Noon) : before.Break(rest.From, rest.Until, Today, Noon);
        if (after.Value is { } changed) Logs.AssertSame(before, changed.Undo().Must);
    });

    [Fact]
    public void Log_AnyRidesInAnotherOrder_GivesTheSame() => Gen.Select(Ride.Array[0, 15], Gen.Int, Rest).Sample((rides, seed, rest) =>
    {
        var resting = RidingLog.None.Break(rest.From, rest.Until, Today, Noon).Must;
        var (one, other) = (resting, resting);
        foreach (var ride in rides) one = one.Log(ride, Today, null, Noon).Must;
        var shuffled = rides.ToArray();
        new Random(seed).Shuffle(shuffled);
        foreach (var ride in shuffled) other = other.Log(ride, Today, null, Noon).Must;
        Logs.AssertSame(one, other);
    });

    [Fact]
    public void Log_AnyEntries_KeepsDaysInOrderAndBreaksFreeOfRides() => Entry.Array[0, 25].Sample(entries =>
    {
        var log = entries.Aggregate(RidingLog.None, (l, e) => e(l));
        Assert.Equal(log.Days.Select(d => d.Day).Distinct().Order(), log.Days.Select(d => d.Day));
        Assert.DoesNotContain(log.Days, d => log.BreakOn(d.Day) is not null);
        Assert.All(log.Breaks.Zip(log.Breaks.Skip(1)), p => Assert.True(p.First.Until <= p.Second.From));
        Assert.All(log.Breaks, b => Assert.False(b.Until <= b.From));
    });

    private static RidingLog Or(RidingLog before, Result<RidingLog> after) => after.Value ?? before;
}
