using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Tests.Compiling;

public class CompiledModelTests
{
    private static readonly DiagnosticModel Model = LampRules.Knowledge().Model;

    [Fact]
    public void Model_GoodRules_HoldsEverythingUnderItsId()
    {
        Assert.Equal(["bulb-burnt", "bulb-loose", "wire-off", KnowledgeBase.SomethingElse], Model.Faults.Select(f => f.Id));
        Assert.Equal(["bulb-look", "wire-run", "dark", "flickers"], Model.Findings.Select(f => f.Id));
        Assert.Equal(["follow-wire", "look-at-bulb"], Model.Checks.Select(c => c.Id));
        Assert.Equal(["fit-bulb", "join-wire", "tighten-bulb"], Model.Repairs.Select(r => r.Id));
        Assert.Equal(["lamp-glass"], Model.Covers.Select(c => c.Id));
        Assert.Equal(180, Model.HelpCost);
        Assert.Equal(0.02, Model.Faults[0].Prior);
        Assert.Equal(new Check("follow-wire", "wire-run", new StepCost(1, 0, 1 + CompileOptions.Default.Patience), AnswerError.Even(0.08), null, Hazard.None, 0.12), Model.Checks[0]);
        Assert.Equal(new StepCost(5, 2, 0), Model.Repairs[0].Cost);
        Assert.Equal(Hazard.Medium, Model.Repairs[0].Hazard);
        Assert.Equal([new Fix("bulb-burnt", 0.97)], Model.Repairs[0].Fixes.AsEnumerable());
    }

    /// <summary>Word mid-points of ICD 203 (3, 12.5, 32.5, 50, 67.5, 87.5, 97 %) must come back out as what a rider sees when only that fault is there.</summary>
    [Theory]
    [InlineData("bulb-burnt", "dark", "yes", 0.97)]
    [InlineData("bulb-burnt", "bulb-look", "black", 0.675)]
    [InlineData("bulb-loose", "bulb-look", "loose", 0.875)]
    [InlineData("bulb-loose", "dark", "yes", 0.325)]
    [InlineData("wire-off", "wire-run", "hanging", 0.875)]
    public void Model_OnlyOneFaultThere_ShowsTheStateAsOftenAsTheRuleSays(string fault, string finding, string state, double chance) =>
        Assert.Equal(chance, ChanceGiven(fault, finding, state), 12);

    /// <summary>The hazards of the finding's own definition, worked here by hand: leak 1 % black and 3 % loose; what 'likely black' leaves is shared by hazard.</summary>
    [Fact]
    public void Model_StateThatTheFaultDoesNotList_KeepsOnlyItsLeak()
    {
        var leakOfLoose = -Math.Log(1 - 0.04) * 0.03 / 0.04;
        var finding = Model.Findings[Model.FindingAt("bulb-look")];
        var net = finding.Links.Single(l => l.Fault == "bulb-burnt").Net;

        Assert.Equal(0, net[2]);
        var total = -Math.Log(1 - 0.04) - Math.Log(1 - net[1]);
        Assert.Equal((1 - Math.Exp(-total)) * leakOfLoose / total, ChanceGiven("bulb-burnt", "bulb-look", "loose"), 12);
    }

    [Fact]
    public void Model_WordsThatAddUpALittleOver_AreScaledDownTogether()
    {
        var model = LampRules.With("bulb-look: {black: likely}", "bulb-look: {black: likely, loose: unlikely}").Knowledge!.Model;

        Assert.Equal(0.99 * 0.675, ChanceGiven("bulb-burnt", "bulb-look", "black", model), 12);
        Assert.Equal(0.99 * 0.325, ChanceGiven("bulb-burnt", "bulb-look", "loose", model), 12);
    }

    [Theory]
    [InlineData(0.04, 0.02, 0.01)]
    [InlineData(0.02, 0.01, 0.005)]
    public void Model_PriorsThatAddUpToMoreThanFaultsAtOnce_AreScaledDownAlike(double faultsAtOnce, double veryCommon, double common)
    {
        var model = KnowledgeLoader.Load([RuleText.FromText(LampRules.File, LampRules.Text)], new CompileOptions(FaultsAtOnce: faultsAtOnce)).Knowledge!.Model;

        Assert.Equal(veryCommon, model.Faults[0].Prior, 12);
        Assert.Equal(common, model.Faults[1].Prior, 12);
    }

    [Theory]
    [InlineData("dark")]
    [InlineData("flickers")]
    public void Model_AnyComplaint_LeavesSomethingElseInTheRunning(string complaint)
    {
        var belief = Inferrer.Infer(Model, [new FindingTold(complaint, "yes", AnswerError.Even(0.02))]);

        Assert.InRange(belief.Marginal(KnowledgeBase.SomethingElse), 0.02, 0.10);
    }

    [Fact]
    public void Model_SomethingElse_HoldsItsShareOfSingleCauses()
    {
        var odds = Model.Faults.Select(f => f.Prior / (1 - f.Prior)).ToList();

        Assert.Equal(CompileOptions.Default.OtherShare, odds[^1] / odds.Sum(), 12);
        Assert.True(Model.Faults[^1].IsOther);
    }

    [Fact]
    public void Version_SameText_IsTheSame()
    {
        Assert.Equal(LampRules.Knowledge().Version, LampRules.Knowledge().Version);
        Assert.Matches("^[0-9a-f]{12}$", LampRules.Knowledge().Version);
    }

    [Fact]
    public void Version_OneLetterChanged_IsAnother() =>
        Assert.NotEqual(LampRules.Knowledge().Version, LampRules.With("Carry a spare", "Carry a spara").Knowledge!.Version);

    [Fact]
    public void Version_FilesInAnotherOrder_IsTheSame()
    {
        var main = RuleText.FromText(LampRules.File, LampRules.Text);
        var words = RuleText.FromText("knowledge/words.yaml", "about: {covers: words, author: us, source: common practice, date: 2026-03-31}\nwords: [{concept: bulb, riders say: [globe]}]");

        Assert.Equal(KnowledgeLoader.Load([main, words]).Knowledge!.Version, KnowledgeLoader.Load([words, main]).Knowledge!.Version);
    }

    private static double ChanceGiven(string fault, string finding, string state, DiagnosticModel? of = null)
    {
        var f = (of ?? Model).Findings[(of ?? Model).FindingAt(finding)];
        var v = f.States.IndexOf(state);
        var net = f.Links.Single(l => l.Fault == fault).Net;
        var leak = f.Leak.Skip(1).Sum();
        var strength = net.Skip(1).Sum();
        var hazard = (-Math.Log(1 - leak) * f.Leak[v] / leak) + (strength > 0 ? -Math.Log(1 - strength) * net[v] / strength : 0);
        var total = -Math.Log(1 - leak) - Math.Log(1 - strength);
        return (1 - Math.Exp(-total)) * hazard / total;
    }
}
