using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Tests.Compiling;

/// <summary>Learnt numbers are laid over the words: they move what they are about, and nothing else.</summary>
public class LearntTests
{
    private static readonly KnowledgeBase Unlearnt = LampRules.Knowledge();

    /// <summary>Odds 0.02 / 0.98, doubled: 0.04 / 0.98, so the chance is 0.04 / 1.02; worked by hand.</summary>
    [Fact]
    public void Compile_LearntOdds_MultiplyTheOddsOfThatFaultAlone()
    {
        var model = With(odds: [new("bulb-burnt", 2)]).Model;

        Assert.Equal(0.04 / 1.02, model.Faults[0].Prior, 12);
        Assert.Equal(Unlearnt.Model.Faults.Skip(1), model.Faults.Skip(1));
        Assert.Equal(Unlearnt.Model.Findings.Select(f => f.Leak.AsEnumerable()), model.Findings.Select(f => f.Leak.AsEnumerable()));
    }

    [Fact]
    public void Compile_LearntLink_ShowsAsOftenAsWasLearnt()
    {
        var model = With(links: [new("bulb-burnt", "bulb-look", "black", 0.81), new("bulb-burnt", "dark", "yes", 0.9)]).Model;

        Assert.Equal(0.81, ChanceGiven(model, "bulb-burnt", "bulb-look", 1), 12);
        Assert.Equal(0.9, ChanceGiven(model, "bulb-burnt", "dark", 1), 12);
        Assert.Equal(ChanceGiven(Unlearnt.Model, "bulb-loose", "bulb-look", 2), ChanceGiven(model, "bulb-loose", "bulb-look", 2), 12);
    }

    [Fact]
    public void Compile_LearntBelowTheLeak_StaysAtTheLeak()
    {
        // Nobody sees 'loose' less often with a loose bulb than with no fault at all: 3 %.
        var model = With(links: [new("bulb-loose", "bulb-look", "loose", 0.005)]).Model;

        Assert.Equal(0.03, ChanceGiven(model, "bulb-loose", "bulb-look", 2), 12);
    }

    [Fact]
    public void Compile_LearntMend_IsTheChanceOfThatRepair() =>
        Assert.Equal([new Fix("bulb-burnt", 0.6)], With(mends: [new("fit-bulb", "bulb-burnt", 0.6)]).Model.Repairs.Single(r => r.Id == "fit-bulb").Fixes.AsEnumerable());

    [Fact]
    public void Compile_EntriesOfRulesThatAreGone_MoveNothing()
    {
        var learnt = With(
            [new("gone", 3), new(KnowledgeBase.SomethingElse, 3)],
            [new("gone", "bulb-look", "black", 0.5), new("bulb-burnt", "gone", "yes", 0.5), new("bulb-burnt", "wire-run", "hanging", 0.5), new("bulb-burnt", "bulb-look", "bright", 0.5)],
            [new("gone", "bulb-burnt", 0.5), new("fit-bulb", "wire-off", 0.5)]);

        Assert.Equal(Unlearnt.Model.Faults.AsEnumerable(), learnt.Model.Faults.AsEnumerable());
        Assert.Equal(Links(Unlearnt), Links(learnt));
        Assert.Equal(Unlearnt.Model.Repairs.SelectMany(r => r.Fixes), learnt.Model.Repairs.SelectMany(r => r.Fixes));

        static IEnumerable<(string, double[])> Links(KnowledgeBase of) => of.Model.Findings.SelectMany(f => f.Links).Select(l => (l.Fault, l.Net.ToArray()));
    }

    [Fact]
    public void Version_WithSomethingLearnt_IsAnother_AndWithNothingIsThatOfTheRules()
    {
        Assert.Equal(Unlearnt.Version, With().Version);
        Assert.NotEqual(Unlearnt.Version, With([new("bulb-burnt", 2)]).Version);
        Assert.NotEqual(With([new("bulb-burnt", 2)]).Version, With([new("bulb-burnt", 2.1)]).Version);
        Assert.Equal(With([new("bulb-burnt", 2)]).Version, With([new("bulb-burnt", 2)]).Version);
    }

    [Fact]
    public void Of_AnyOrder_IsTheSameValue()
    {
        var (one, other) = (new LearntOdds("a", 2), new LearntOdds("b", 0.5));

        Assert.Equal(Learnt.Of([one, other], [], []), Learnt.Of([other, one], [], []));
        Assert.Equal(Learnt.Of([one, other], [], []).GetHashCode(), Learnt.Of([other, one], [], []).GetHashCode());
        Assert.NotEqual(Learnt.Of([one], [], []), Learnt.Of([other], [], []));
        Assert.Equal(Learnt.Nothing, Learnt.Of([], [], []));
    }

    [Theory]
    [InlineData("a", 0.04)]
    [InlineData("a", 21)]
    [InlineData("a", double.NaN)]
    [InlineData("A b", 2)]
    [InlineData("", 2)]
    public void Of_OutOfRange_Throws(string fault, double times) =>
        Assert.Throws<ArgumentException>(() => Learnt.Of([new(fault, times)], [], []));

    private static KnowledgeBase With(LearntOdds[]? odds = null, LearntLink[]? links = null, LearntMend[]? mends = null) => KnowledgeLoader.Load(
        [RuleText.FromText(LampRules.File, LampRules.Text)], new CompileOptions { Learnt = Learnt.Of(odds ?? [], links ?? [], mends ?? []) }).Knowledge!;

    private static double ChanceGiven(DiagnosticModel model, string fault, string finding, int state) =>
        new StateChances(model, model.FindingAt(finding)).Given([model.FaultAt(fault)])[state];
}
