using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>A bike's log stays small however long and however often something is logged.</summary>
public sealed class BikeSizeTest
{
    private const int MostBytes = 128 * 1024;

    [Fact]
    public void Bike_RiddenAndServicedDailyForTenYears_StaysSmall()
    {
        var bike = BikeProfile.New(new BikeId("b"), new MemberId("m"));
        for (var i = 0; i < 3650; i++)
        {
            var (today, now) = (Sample.Today.PlusDays(i), Sample.Noon.AddDays(i));
            bike = bike with
            {
                Riding = bike.Riding.Log(new RiddenDay(today, 10.125, 0.555, (Weather)(i % 3)), today, null, now).Must,
                Done = DoneLog.Add(bike.Done, new ServiceDone($"a-task-with-a-long-name-{i % 30}", today, now, "helper", new CaseId("case-" + i)), today, null).Must.All,
            };
        }

        Assert.Equal((RidingLog.KeepsDays + 1, DoneLog.Keeps), (bike.Riding.Days.Length, bike.Done.Length));
        Assert.Equal(3650, bike.Riding.Days.Length + bike.Riding.Folded!.Totals.Sum(t => t.Days));
        Assert.InRange(BsonSerializer.Serialize(BikeDocument.ToBson(bike)).Length, 40_000, MostBytes);
    }

    [Fact]
    public void Bike_WithAllThatALogMayHold_StaysSmall()
    {
        ImmutableArray<RidingBreak> breaks = [.. Enumerable.Range(0, RidingLog.KeepsDays + 1).Select(i => new RidingBreak(Sample.Today.PlusDays(2 * i), Sample.Today.PlusDays((2 * i) + 1)))];
        ImmutableArray<RiddenDay> days = [.. Enumerable.Range(0, RidingLog.KeepsDays + 1).Select(i => new RiddenDay(Sample.Today.PlusDays(-i), 499.999, 23.999, Weather.Dusty)).Reverse()];
        var pace = new StatedPace(6.5, 123.456, 4.5, Sample.Today);
        ImmutableArray<WeatherTotal> totals = [.. Enum.GetValues<Weather>().Select(w => new WeatherTotal(w, 1, 1, 1, 1, 1))];
        var bike = BikeProfile.New(new BikeId("b"), new MemberId("m")) with
        {
            Riding = new RidingLog(
                days, new FoldedRiding(Sample.Today, Sample.Today, totals), breaks, pace, new RidingUndo(Sample.Noon, "10 km", Sample.Today, days[0], breaks, pace)),
            Done = [.. Enumerable.Range(0, DoneLog.Keeps).Select(i => new ServiceDone("a-task-with-a-long-name", Sample.Today, Sample.Noon, "helper", new CaseId("case-1234567890")))],
        };

        Assert.InRange(BsonSerializer.Serialize(BikeDocument.ToBson(bike)).Length, 40_000, MostBytes);
    }
}
