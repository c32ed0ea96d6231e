using CsCheck;
using ShedBot.Trade.Casing;

namespace ShedBot.Trade.Tests.Casing;

public class CapstanTests
{
    private static Angle Degrees(double degrees) => Angle.FromDegrees(degrees);

    // Source: Euler's capstan equation; the friction values are from memory.
    [Theory]
    [InlineData(CasingFriction.LinedAndOiled, 0.924, 0.855, 0.790)]
    [InlineData(CasingFriction.Oiled, 0.855, 0.730, 0.624)]
    [InlineData(CasingFriction.DrySteel, 0.790, 0.624, 0.493)]
    [InlineData(CasingFriction.Rusty, 0.730, 0.533, 0.390)]
    public void ShareThrough_FourCasings_MatchesTable(double mu, double at90, double at180, double at270)
    {
        Printed.Matches(at90, 3, Capstan.ShareThrough(mu, Degrees(90)));
        Printed.Matches(at180, 3, Capstan.ShareThrough(mu, Degrees(180)));
        Printed.Matches(at270, 3, Capstan.ShareThrough(mu, Degrees(270)));
    }

    // Source: integrating dT = -mu T dtheta in small steps, independent of the exponential.
    [Fact]
    public void ShareThrough_AgainstSmallSteps_Agrees()
    {
        var tension = 1.0;
        for (var i = 0; i < 1_000_000; i++) tension -= 0.15 * tension * Math.PI / 1_000_000;

        Assert.Equal(tension, Capstan.ShareThrough(0.15, Degrees(180)), 6);
    }

    // Laws of the equation: never a gain, two bends multiply, more friction is never better.
    [Fact]
    public void ShareThrough_AnyTwoBends_MultiplyAndNeverGain() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0, 720], Gen.Double[0, 720]).Sample((mu, one, two) =>
        {
            var (first, second) = (Capstan.ShareThrough(mu, Degrees(one)), Capstan.ShareThrough(mu, Degrees(two)));
            return first is > 0 and <= 1
                && Math.Abs(Capstan.ShareThrough(mu, Degrees(one + two)) - (first * second)) < 1e-12
                && Capstan.ShareThrough(mu + 0.1, Degrees(one)) <= first;
        });

    [Fact]
    public void PullAtLever_OfThePullAtTheArm_IsThePullStartedWith() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 0.3], Gen.Double[0, 720]).Sample((newtons, mu, degrees) =>
        {
            var arm = Capstan.PullAtArm(Force.FromNewtons(newtons), mu, Degrees(degrees));
            return Math.Abs(Capstan.PullAtLever(arm, mu, Degrees(degrees)).Newtons - newtons) < 1e-9;
        });

    [Fact]
    public void ShareThrough_NegativeBend_SaysTheLimit() =>
        Refusal.Says(
            "bends", "Must be between 0 ° and 3,600 °; was -1 °.", () => Capstan.ShareThrough(0.1, Degrees(-1)));

    [Fact]
    public void ShareThrough_FrictionAboveOne_SaysTheLimit() =>
        Refusal.Says("friction", "Must be between 0 and 1; was 1.2.", () => Capstan.ShareThrough(1.2, Degrees(90)));
}
