using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Tests.Simulation;

public class BillTests
{
    private static readonly DiagnosticModel Model = PumpRules.Knowledge.Model;

    private readonly Bill bill = new(Model, new CostWeights());

    // By hand from the rules of the pump: reading 0.5, lid 6, looking at the wheel 2, turning the shaft 1.
    [Fact]
    public void Check_TwoBehindOneCover_PayItOnce()
    {
        bill.Check(Check("look-wheel"));
        bill.Check(Check("turn-shaft"));
        Assert.Equal(0.5 + 6 + 2 + 0.5 + 1, bill.Minutes, 12);
        Assert.Equal(2, bill.Asked);
    }

    // A wheel is 20 minutes and 10 in money, a minute each by the usual weights; the trial needs the lid back on, so it is opened again. Each
    // of the two checks costs a minute of patience besides.
    [Fact]
    public void Repair_TrialAfterIt_ShutsTheCovers()
    {
        bill.Check(Check("look-wheel"));
        bill.Repair(Repair("new-wheel"));
        bill.Check(Check("turn-shaft"));
        Assert.Equal(0.5 + 6 + 2 + 20 + 0.5 + 6 + 1, bill.Minutes, 12);
        Assert.Equal(bill.Minutes + 10 + (2 * 1), bill.Cost, 12);
    }

    [Fact]
    public void Help_AtTheEnd_CostsWhatTheModelSaysAndNoneOfTheRidersMinutes()
    {
        bill.Help();
        Assert.Equal(Model.HelpCost, bill.Cost);
        Assert.Equal(0, bill.Minutes);
    }

    private static Check Check(string id) => Model.Checks[Model.CheckAt(id)];

    private static Repair Repair(string id) => Model.Repairs[Model.RepairAt(id)];
}
