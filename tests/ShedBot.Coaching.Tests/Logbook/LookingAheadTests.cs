using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Logbook;

public sealed class LookingAheadTests
{
    [Theory]
    [InlineData("7 days", "2026-05-08")]
    [InlineData("2 weeks", "2026-05-15")]
    [InlineData("to 15 may", "2026-05-15")]
    [InlineData("to 2026-06-01", "2026-06-01")]
    public void To_ADay_IsTheSameTimeThen(string words, string day)
    {
        var at = LookingAhead.To(words, Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now).Must.At;
        Assert.Equal(day + "T18:00", at.ToString("yyyy-MM-ddTHH:mm", null));
    }

    [Theory]
    [InlineData("to yesterday")]
    [InlineData("to never")]
    [InlineData("9999 days")]
    public void To_NoDayToCome_IsRefused(string words) =>
        Assert.NotNull(LookingAhead.To(words, Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now).Refused);

    [Fact]
    public void To_TheNextDueDay_IsAfterTodayAndSomethingIsDueThen()
    {
        var bike = Bench.Bike.With(new FittedEntry(Bench.Today)).With(new RideEntry(new RiddenDay(Bench.Today, 5, null, Weather.Dry)));
        Assert.True(LookingAhead.To("", bike, Bench.Knowledge, Bench.Speaker, Bench.Now).Must.At > Bench.Now);
    }

    [Fact]
    public void To_TheNextDueDayOfABikeOfWhichNothingIsKnown_SaysWhatToDo() =>
        Assert.Contains("skip 7 days", LookingAhead.To("", Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now).Refused!.Say, StringComparison.Ordinal);
}
