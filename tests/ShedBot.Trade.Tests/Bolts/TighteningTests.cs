using ShedBot.Trade.Bolts;

namespace ShedBot.Trade.Tests.Bolts;

public class TighteningTests
{
    private static MetricThread Thread(string name) => MetricThread.All.Single(thread => thread.Name == name);

    private static double Torque(string name, PropertyClass strength, ThreadCondition condition) =>
        Tightening.ForPreload(Thread(name), strength, condition).NewtonMeters;

    // Source: Shigley, bolted joints, F = 0.75 S_p A_s and T = K F d; K 0.15 is common practice, proof stresses from memory.
    [Theory]
    [InlineData("M5", 3.3, 2.5, 6.2, 4.6, 3.3, 6.2)]
    [InlineData("M6", 5.6, 4.2, 10.5, 7.9, 4.7, 8.7)]
    [InlineData("M8", 13.6, 10.2, 25.5, 19.1, 8.5, 15.9)]
    [InlineData("M10", 27.0, 20.2, 50.5, 37.8, 13.5, 25.2)]
    public void ForPreload_FourThreads_MatchesTable(
        string name, double dry48, double oiled48, double dry88, double oiled88, double preload48, double preload88)
    {
        Printed.Matches(dry48, 1, Torque(name, PropertyClass.Class48, ThreadCondition.Dry));
        Printed.Matches(oiled48, 1, Torque(name, PropertyClass.Class48, ThreadCondition.Oiled));
        Printed.Matches(dry88, 1, Torque(name, PropertyClass.Class88, ThreadCondition.Dry));
        Printed.Matches(oiled88, 1, Torque(name, PropertyClass.Class88, ThreadCondition.Oiled));
        Printed.Matches(preload48, 1, Tightening.Preload(Thread(name), PropertyClass.Class48).Kilonewtons);
        Printed.Matches(preload88, 1, Tightening.Preload(Thread(name), PropertyClass.Class88).Kilonewtons);
    }

    // Source: torque list of a general motorcycle article, which rounds its own way: agreement to 2 % is all that can be asked.
    [Theory]
    [InlineData("M5", "8.8", 6.1)]
    [InlineData("M6", "8.8", 10.4)]
    [InlineData("M8", "8.8", 25.5)]
    [InlineData("M6", "4.6", 4.1)]
    [InlineData("M8", "4.6", 9.9)]
    public void ForPreload_AgainstAPublishedList_AgreesWithinTwoPercent(string name, string marking, double newtonMetres) =>
        Printed.Within(newtonMetres, Torque(name, PropertyClass.FromMarking(marking)!, ThreadCondition.Dry), 0.02);

    [Fact]
    public void Preload_M8Class48_Is8510() =>
        Printed.Matches(8510, -1, Tightening.Preload(MetricThread.M8, PropertyClass.Class48).Newtons);

    // Source: ISO 898-1 stress area formula, pi/4 (d - 0.9382 P)^2, against the tabled areas.
    [Fact]
    public void StressArea_EveryThread_FollowsTheStandardsFormula() =>
        Assert.All(MetricThread.All, thread => Printed.Within(
            Math.PI / 4 * Math.Pow(thread.Diameter.Millimeters - (0.9382 * thread.Pitch.Millimeters), 2),
            thread.StressArea.SquareMillimeters, 0.002));

    // Source: statics, 25 bar on a 47 mm bore and four studs.
    [Fact]
    public void GasLoadPerStud_FourStuds_IsWellUnderThePreloadOfM8Class48()
    {
        var bore = Length.FromMillimeters(47);
        var perStud = HeadJoint.GasLoadPerStud(Pressure.FromBars(25), bore, 4);

        Printed.Matches(1.08, 2, perStud.Kilonewtons);
        Printed.Matches(4.34, 2, 4 * perStud.Kilonewtons);
        Assert.True(perStud < Tightening.Preload(MetricThread.M8, PropertyClass.Class48));
    }

    // Source: 1 N m = 8.85 in lbf; the dry M8 class 4.8 torque is quoted as 121 in lbf.
    [Fact]
    public void ForPreload_M8Class48InInchPounds_IsTheQuotedHeadTorque() =>
        Printed.Within(
            121, Tightening.ForPreload(MetricThread.M8, PropertyClass.Class48, ThreadCondition.Dry).PoundForceInches);

    // Source: T = K F d read backwards. The M8 figure on an M6: far past proof for 4.8, and still no reserve for 8.8.
    [Theory]
    [InlineData("4.8", 1.82)]
    [InlineData("8.8", 0.97)]
    public void ShareOfProofUsed_M8FigureOnM6_IsFarBeyondTheAim(string marking, double share)
    {
        var m8 = Tightening.ForPreload(MetricThread.M8, PropertyClass.Class48, ThreadCondition.Dry);

        Printed.Matches(
            share, 2,
            Tightening.ShareOfProofUsed(m8, MetricThread.M6, PropertyClass.FromMarking(marking)!, ThreadCondition.Dry));
    }

    // Source: K 0.20 over K 0.15; a dry figure on oiled threads uses the whole proof load.
    [Fact]
    public void ShareOfProofUsed_DryFigureOnOiledThreads_IsAllOfIt()
    {
        var dry = Tightening.ForPreload(MetricThread.M6, PropertyClass.Class88, ThreadCondition.Dry);

        Assert.Equal(0.75, Tightening.ShareOfProofUsed(dry, MetricThread.M6, PropertyClass.Class88, ThreadCondition.Dry), 9);
        Assert.Equal(1.00, Tightening.ShareOfProofUsed(dry, MetricThread.M6, PropertyClass.Class88, ThreadCondition.Oiled), 9);
    }

    [Fact]
    public void TorqueFactor_UnnamedCondition_Refuses() =>
        Refusal.Says("condition", "Must be Dry or Oiled.", () => Tightening.TorqueFactor((ThreadCondition)7));

    [Fact]
    public void ShareOfProofUsed_NegativeTorque_Refuses() =>
        Refusal.Says(
            "applied", "Must be 0 or more; was -1 N·m.",
            () => Tightening.ShareOfProofUsed(
                UnitsNet.Torque.FromNewtonMeters(-1), MetricThread.M6, PropertyClass.Class88, ThreadCondition.Dry));
}
