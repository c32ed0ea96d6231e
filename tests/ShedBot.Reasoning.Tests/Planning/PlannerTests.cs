using System.Collections.Immutable;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;
using static ShedBot.Reasoning.Tests.Planning.Problems;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>What the planner must and must not propose. The examples are our own, worked by hand.</summary>
public class PlannerTests
{
    private static readonly PlannerOptions AheadOnly = new(ExactSituations: 0);

    // A repair that costs C and helps with chance p is never worth trying last when p * help <= C.
    [Theory]
    [InlineData(39, false)]
    [InlineData(41, true)]
    public void Decide_LastRepair_IsTriedOnlyWhereItsChanceTimesHelpPassesItsCost(double help, bool tried)
    {
        var model = Model([("A", 0.5), ("other", 0.5)], [], [Mend("a", 20, "A")], [], help);

        var decision = Planner.Decide(Request(model));

        Assert.Equal(tried ? new DoRepair("a") : new GetHelp(), decision.Step);
        Assert.Equal(tried ? 20 + (0.5 * help) : help, decision.ExpectedCost, 1e-9);
        Assert.Equal(tried ? new[] { "a" } : [], decision.RepairOrder.ToArray());
    }

    [Fact]
    public void Decide_HazardOverTheLimit_IsNeverProposedHoweverCheap()
    {
        var model = OneCheck(hazard: Hazard.Medium);

        Assert.Equal(new DoCheck("spark"), Planner.Decide(Request(model) with { HazardLimit = Hazard.Medium }).Step);
        var careful = Planner.Decide(Request(model) with { HazardLimit = Hazard.Low });
        Assert.DoesNotContain(careful.Considered, c => c.Step is DoCheck);
        Assert.Equal(17.0, careful.ExpectedCost, 1e-9);
    }

    [Fact]
    public void Decide_EveryStepTooHazardous_GetsHelp()
    {
        var model = Model([("A", 0.9), ("B", 0.1)], [], [Mend("a", 1, "A", hazard: Hazard.High)], [], 500);

        var decision = Planner.Decide(Request(model) with { HazardLimit = Hazard.Medium });

        Assert.Equal(new GetHelp(), decision.Step);
        Assert.Equal(500, decision.ExpectedCost, 1e-9);
    }

    // ECO = C + u * 17 + (1 - u) * 15.434: worth less the more often the answer is 'not sure', and not at all at u = 0.37.
    [Theory]
    [InlineData(0.0, true)]
    [InlineData(0.3, true)]
    [InlineData(0.37, false)]
    public void Decide_UnsureAnswers_MakeACheckWorthLess(double unsure, bool asked)
    {
        var decision = Planner.Decide(Request(OneCheck(unsure)), AheadOnly);
        var check = decision.Considered.Single(c => c.Step is DoCheck).ExpectedCost;

        Assert.Equal(1 + (unsure * 17) + ((1 - unsure) * 15.434), check, 1e-9);
        Assert.Equal(asked, check < 17);
    }

    [Fact]
    public void Least_UnsureAnswers_IsTheSameSumExactly() =>
        Assert.Equal(1 + (0.3 * 17) + (0.7 * 15.434), PolicyCost.Least(OneCheck(0.3), CostWeights.MinutesOnly), 1e-9);

    // Three looks: nothing, a score, a crack. By hand 1 + 0.5 * 10 + 0.3 * 20 + 0.2 * 30; without asking 10 + 0.5 * 20 + 0.2 * 30 = 26.
    [Theory]
    [InlineData(0)]
    [InlineData(300_000)]
    public void Decide_CheckOfThreeStatesThatTellsAll_IsAskedAndWorthItsSum(int exact)
    {
        var model = DiagnosticModel.Create(
            [new Fault("A", 0.5), new Fault("B", 0.3), new Fault("C", 0.2)],
            [new Finding("look", ["nothing", "score", "crack"], [1, 0, 0], [Link.FromNet("B", 0, 1, 0), Link.FromNet("C", 0, 0, 1)])],
            [new Check("look at it", "look", new(1))],
            [Mend("a", 10, "A"), Mend("b", 20, "B"), Mend("c", 30, "C")],
            [],
            1000);

        var decision = Planner.Decide(Request(model), new(ExactSituations: exact));

        Assert.Equal(new DoCheck("look at it"), decision.Step);
        Assert.Equal(18, decision.ExpectedCost, 1e-9);
        Assert.Equal(["a", "b", "c"], decision.RepairOrder.ToArray());
    }

    // Two ways to see one thing share its true state: the second cannot be planned on as if it were fresh evidence.
    [Theory]
    [InlineData(0)]
    [InlineData(300_000)]
    public void Decide_TwoChecksOfOneFinding_AreNotCountedTwice(int exact)
    {
        var model = DiagnosticModel.Create(
            [new Fault("A", 0.5), new Fault("B", 0.5)],
            [Finding.YesNo("wet", 0.02, ("A", 0.5))],
            [new Check("look", "wet", new(1)), new Check("touch", "wet", new(1))],
            [Mend("a", 60, "A"), Mend("b", 60, "B")],
            [],
            1000);

        var both = Planner.Decide(Request(model), new(ExactSituations: exact));
        var one = Planner.Decide(Request(model) with { ChecksClosed = ["touch"] }, new(ExactSituations: exact));

        Assert.IsType<DoCheck>(both.Step);
        Assert.Equal(one.ExpectedCost, both.ExpectedCost, 1e-9);
    }

    [Fact]
    public void Decide_MoreCoversThanABitSetHolds_PlansWithTheOnesInReach()
    {
        var covers = Enumerable.Range(0, 90).Select(i => new Cover($"lid {i}", new(5))).ToArray();
        var model = Model(
            [("A", 0.6), ("B", 0.4)], [], [Mend("a", 10, "A", cover: "lid 80"), Mend("b", 10, "B", cover: "lid 89")], covers, 500);

        var shut = Planner.Decide(Request(model));
        var open = Planner.Decide(Request(model) with { OpenCovers = ["lid 80", "lid 7"] });

        Assert.Equal(15 + (0.4 * 15), shut.ExpectedCost, 1e-9);
        Assert.Equal(10 + (0.4 * 15), open.ExpectedCost, 1e-9);
    }

    [Fact]
    public void Decide_CoverAlreadyOpen_MakesWhatIsBehindItCheap()
    {
        var shut = Planner.Decide(Request(BehindACover));
        var open = Planner.Decide(Request(BehindACover) with { OpenCovers = ["lid"] });

        Assert.Equal(new DoRepair("a"), shut.Step);
        Assert.Equal(new DoRepair("b"), open.Step);
        // b, d or a after it by p / C: 0.3 / 4, then 0.2 / 4 = 0.5 / 10, a tie. 4 + 0.7 * 4 + 0.5 * 10.
        Assert.Equal(11.8, open.ExpectedCost, 1e-9);
    }

    [Fact]
    public void Decide_CoverThatCannotBeOpened_HidesWhatIsBehindItEvenIfSaidToBeOpen()
    {
        var decision = Planner.Decide(Request(BehindACover) with { OpenCovers = ["lid"], ClosedCovers = ["lid"] });

        Assert.Equal(["a"], decision.RepairOrder.ToArray());
        Assert.DoesNotContain(decision.Considered, c => c.Step is DoRepair { Repair: "b" or "d" });
    }

    [Fact]
    public void Decide_StepsThatAreClosed_AreNotProposed()
    {
        var decision = Planner.Decide(Request(OneCheck()) with { ChecksClosed = ["spark"], RepairsClosed = ["s"] });

        Assert.Equal(new DoRepair("f"), decision.Step);
        // What is left after it is 0.3 for S, which nothing mends now, and 0.2 for X: 20 * 0.5 is more than 0.8 * 0.2 * 50.
        Assert.Equal(["f"], decision.RepairOrder.ToArray());
        Assert.Equal(3, decision.Considered.Length);
    }

    [Fact]
    public void Decide_LowerSuccessAtASecondTry_MovesTheRepairBack()
    {
        var request = Request(ThreeRepairs);
        var again = request with { RepairSuccessFactor = ImmutableDictionary<string, double>.Empty.Add("r2", 0.1) };

        Assert.Equal(new DoRepair("r2"), Planner.Decide(request).Step);
        Assert.Equal(new DoRepair("r3"), Planner.Decide(again).Step);
    }

    [Fact]
    public void Decide_EqualCosts_GoToLessHazardThenLessCostThenTheId()
    {
        var model = Model(
            [("A", 0.4), ("B", 0.3), ("C", 0.3)],
            [],
            [Mend("z", 4, "A", hazard: Hazard.Low), Mend("y", 3, "B"), Mend("x", 3, "C")],
            [],
            1000);
        // p / C is 0.1 for each, so every order costs the same.
        Assert.Equal(
            [new DoRepair("x"), new DoRepair("y"), new DoRepair("z")],
            Planner.Decide(Request(model)).Considered.Take(3).Select(c => c.Step));
    }

    [Fact]
    public void Decide_SeveralFaults_RepairsOneAfterTheOther()
    {
        // Worn bar and worn cam nearly always come together here: one repair alone does not end it.
        var model = Model([("bar", 0.5), ("cam", 0.5)], [], [Mend("new bar", 10, "bar"), Mend("new cam", 20, "cam")], [], 500);
        var belief = Inferrer.Infer(model, []);

        var decision = Planner.Decide(new PlanRequest(belief) { Weights = CostWeights.MinutesOnly });

        // Each of {bar}, {cam}, {bar, cam} has a third: 10, then in two of three cases 20.
        Assert.Equal(10 + (20 * 2 / 3.0), decision.ExpectedCost, 1e-9);
        Assert.Equal(["new bar", "new cam"], decision.RepairOrder.ToArray());
        Assert.Equal(PlanMethod.LookAhead, decision.Method);
    }

    [Fact]
    public void Decide_SameRequestTwice_IsTheSameDecision()
    {
        var model = RandomModels.Big(7);
        var request = new PlanRequest(Inferrer.Infer(model, []));

        var (first, second) = (Planner.Decide(request), Planner.Decide(request));

        Assert.Equal(first.Considered.ToArray(), second.Considered.ToArray());
        Assert.Equal(first.RepairOrder.ToArray(), second.RepairOrder.ToArray());
    }

    [Fact]
    public void Decide_FewerSetsThanTheBeliefHolds_StillUsesTheWholeWeight()
    {
        var belief = Inferrer.Infer(RandomModels.Big(3), []);

        var all = Planner.Decide(new PlanRequest(belief), new(MostSets: 1000));
        var few = Planner.Decide(new PlanRequest(belief), new(MostSets: 12));

        Assert.InRange(few.ExpectedCost, 0.7 * all.ExpectedCost, 1.3 * all.ExpectedCost);
    }

    [Fact]
    public void Decide_ModelWithMoreChecksThanAreKept_AsksTheOneThatTells()
    {
        var dull = Enumerable.Range(0, 40).Select(i => Ask($"dull {i:d2}", 1, 0.3, [("A", 0.01)]));
        var model = Model(
            [("A", 0.5), ("B", 0.5)], [.. dull, Ask("telling", 1, 0.01, [("A", 0.99)])], [Mend("a", 60, "A"), Mend("b", 60, "B")], [], 500);

        Assert.Equal(new DoCheck("telling"), Planner.Decide(Request(model)).Step);
    }
}
