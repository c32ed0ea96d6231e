using CsCheck;
using ShedBot.Trade.Gearing;

namespace ShedBot.Trade.Tests.Gearing;

public class RoadSpeedTests
{
    private static readonly Length Circumference = Length.FromMeters(2.055);

    private static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);

    // Source: kinematics, v = n C / i, for 82/20 primary teeth and a 10-tooth small sprocket.
    [Theory]
    [InlineData(32, 13.12, 9.40, 37.6, 47.0, 56.4)]
    [InlineData(36, 14.76, 8.35, 33.4, 41.8, 50.1)]
    [InlineData(40, 16.40, 7.52, 30.1, 37.6, 45.1)]
    [InlineData(44, 18.04, 6.83, 27.3, 34.2, 41.0)]
    [InlineData(48, 19.68, 6.27, 25.1, 31.3, 37.6)]
    [InlineData(50, 20.50, 6.01, 24.1, 30.1, 36.1)]
    public void At_RearSprocketTable_MatchesEveryCell(
        int rear, double overall, double perThousand, double at4000, double at5000, double at6000)
    {
        var ratio = GearRatio.Overall(GearRatio.FromTeeth(82, 20), GearRatio.FromTeeth(rear, 10));

        Printed.Matches(overall, 2, ratio);
        Printed.Matches(perThousand, 2, RoadSpeed.At(Rpm(1000), ratio, Circumference).KilometersPerHour);
        Printed.Matches(at4000, 1, RoadSpeed.At(Rpm(4000), ratio, Circumference).KilometersPerHour);
        Printed.Matches(at5000, 1, RoadSpeed.At(Rpm(5000), ratio, Circumference).KilometersPerHour);
        Printed.Matches(at6000, 1, RoadSpeed.At(Rpm(6000), ratio, Circumference).KilometersPerHour);
    }

    // Source: kinematics; the engine speed for 20 mph on 44 teeth.
    [Fact]
    public void EngineSpeedAt_TwentyMilesAnHour_Is4709() =>
        Printed.Matches(4709, 0, RoadSpeed.EngineSpeedAt(Speed.FromMilesPerHour(20), 18.04, Circumference).RevolutionsPerMinute);

    [Fact]
    public void At_FiveThousandOn44Teeth_Is34Point17() =>
        Printed.Matches(34.17, 2, RoadSpeed.At(Rpm(5000), 4.1 * 4.4, Circumference).KilometersPerHour);

    // Source: kinematics; 3 N m x 18.04 x 0.9 by hand. The efficiency is from memory.
    [Fact]
    public void WheelTorque_ThreeNewtonMetres_Is48Point7() =>
        Printed.Matches(48.7, 1, RoadSpeed.WheelTorque(Torque.FromNewtonMeters(3), 18.04, 0.9).NewtonMeters);

    // Source: owners count 82 or 83 teeth; 83/20 is 4.15.
    [Theory]
    [InlineData(82, 4.10)]
    [InlineData(83, 4.15)]
    public void FromTeeth_EitherCountedPrimary_GivesItsOwnRatio(int teeth, double ratio) =>
        Printed.Matches(ratio, 2, GearRatio.FromTeeth(teeth, 20));

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    [InlineData(300, true)]
    [InlineData(301, false)]
    public void FromTeeth_AtTheLimits_TakesFiveToThreeHundred(int teeth, bool taken)
    {
        if (taken)
            Assert.Equal(teeth / 10.0, GearRatio.FromTeeth(teeth, 10), 12);
        else
            Refusal.Says("driven", $"Must be between 5 and 300; was {teeth}.", () => GearRatio.FromTeeth(teeth, 10));
    }

    [Fact]
    public void WheelTorque_EfficiencyAboveOne_Refuses() =>
        Refusal.Says(
            "efficiency", "Must be more than 0 and at most 1; was 1.1.",
            () => RoadSpeed.WheelTorque(Torque.FromNewtonMeters(3), 18, 1.1));

    // Law: the two directions undo each other.
    [Fact]
    public void EngineSpeedAt_OfTheSpeedItGives_IsTheSameEngineSpeed() =>
        Gen.Select(Gen.Double[0, 9000], Gen.Double[5, 40], Gen.Double[1, 2.5]).Sample((rpm, overall, metres) =>
        {
            var round = Length.FromMeters(metres);
            var back = RoadSpeed.EngineSpeedAt(RoadSpeed.At(Rpm(rpm), overall, round), overall, round);
            return Math.Abs(back.RevolutionsPerMinute - rpm) < 1e-6;
        });
}
