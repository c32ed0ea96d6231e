using ShedBot.Coaching.Service;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Tests.Service;

public sealed class UsedAmountTests
{
    [Theory]
    [InlineData(11, 14, Measure.RidingDays, false, "11 of about 14 riding days")]
    [InlineData(14, 14, Measure.RidingDays, false, "14 of about 14 riding days")]
    [InlineData(11.96, 14, Measure.RidingDays, true, "about 12 of 14 riding days")]
    [InlineData(0, 1, Measure.RidingDays, false, "0 of about 1 riding day")]
    [InlineData(9, 1, Measure.RidingDays, false, "9 riding days, due at 1")]
    [InlineData(171.4, 150, Measure.Kilometres, true, "about 171 km, due at 150")]
    [InlineData(2.25, 10, Measure.Hours, false, "2.3 of about 10 hours of riding")]
    [InlineData(18, 365, Measure.Days, false, "18 of 365 days")]
    [InlineData(0, 0, Measure.RidingDays, false, "before the next ride")]
    public void Words_OfAnyAmount_ReadAsSaid(double used, double allowed, Measure measure, bool estimated, string words) =>
        Assert.Equal(words, new UsedAmount(used, allowed, measure, estimated).Words);

    [Theory]
    [InlineData(7, 14, 0.5)]
    [InlineData(0, 0, 1)]
    [InlineData(1, 0, double.PositiveInfinity)]
    public void Share_AtOne_IsDue(double used, double allowed, double share) =>
        Assert.Equal(share, new UsedAmount(used, allowed, Measure.RidingDays, false).Share);
}
