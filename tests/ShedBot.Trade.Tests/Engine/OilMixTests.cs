using ShedBot.Trade.Engine;

namespace ShedBot.Trade.Tests.Engine;

public class OilMixTests
{
    // Source: oil = fuel / R by hand, as the tables on bottles of two-stroke oil print it.
    [Theory]
    [InlineData(5, 25, 200.0)]
    [InlineData(5, 24, 208.3)]
    [InlineData(1, 16, 62.5)]
    [InlineData(1, 50, 20.0)]
    public void OilFor_LitresOfFuel_MatchesTable(double litres, double ratio, double millilitres) =>
        Printed.Matches(millilitres, 1, OilMix.OilFor(Volume.FromLiters(litres), ratio).Milliliters);

    // Source: a US gallon is 128 US fl oz (NIST Handbook 44, appendix C); 128 / 32 and 128 / 24.
    [Theory]
    [InlineData(32, 4.00)]
    [InlineData(24, 5.33)]
    [InlineData(50, 2.56)]
    public void OilFor_AGallon_MatchesTable(double ratio, double ounces) =>
        Printed.Matches(ounces, 2, OilMix.OilFor(Volume.FromUsGallons(1), ratio).UsOunces);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0)]
    [InlineData(201)]
    public void OilFor_NoRatio_IsRefused(double ratio) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OilMix.OilFor(Volume.FromLiters(1), ratio));
}
