using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>What is said to differ between two sets of rules, for one change of each kind.</summary>
public class TrialScopesTests
{
    private const string WheelRepair = "    cover: lid\n    hazard: low\n    parts: [{name: wheel";

    public static TheoryData<string, string, string> Changes => new()
    {
        { "    minutes: 3\n", "    minutes: 30\n", "check feel-hose" },
        { "    hazard: low\n    hands on: yes\n    reliability: easy to misread\n    cautions: [{word: CAUTION", "    hazard: medium\n    hands on: yes\n    reliability: easy to misread\n    cautions: [{word: CAUTION", "check feel-hose" },
        { "    reliability: plain to see\n    cautions: [{word: WARNING", "    reliability: takes a practised eye\n    cautions: [{word: WARNING", "check look-wheel" },
        { "    hazard: low\n    hands on: yes\n    reliability: plain to see", "    hazard: low\n    hands on: no\n    reliability: plain to see", "check look-wheel" },
        { "    minutes: 15\n", "    minutes: 16\n", "repair open-tap" },
        { "    mends: {hose-kinked: very likely}", "    mends: {hose-kinked: likely}", "repair straighten-hose" },
        { WheelRepair, "    cover: lid\n    hazard: medium\n    parts: [{name: wheel", "repair new-wheel" },
        { WheelRepair, "    hazard: low\n    parts: [{name: wheel", "repair new-wheel" },
        { "      - {id: worn, says: Its blades are worn}\n", "      - {id: worn, says: Its blades are worn}\n      - {id: gone, says: There is none}\n", "fault wheel-worn, finding wheel, words" },
        { ", stop riding: A cracked wheel can fly apart. Pull the plug and leave it.}", "}", "finding wheel" },
        { "riders say: [the hose has a kink]", "riders say: [the hose has a kink, a sharp bend in it]", "finding hose, words" },
        { "says: It lies straight}", "says: It lies quite straight}", "words" },
        { "      - {id: gritty, says: It is gritty}\n", "      - {id: gritty, says: It is gritty}\n    seen anyway: {gritty: very unlikely}\n", "fault bearing-dry, finding bearing" },
        { "      - the pump runs dry\n", "      - the pump runs dry\n      - not a drop\n", "complaint no-water, words" },
        { "    called: no water comes\n", "    called: there is no water\n", "" },
        { "      wheel: {worn: very likely}", "      wheel: {worn: unlikely}", "fault wheel-worn" },
        { "{fact: age, is: old, times: 6}", "{fact: age, is: old, times: 2}", "fault wheel-worn" },
        { "    how common: common\n    shows as:\n      hums: {yes: almost certain}", "    how common: rare\n    shows as:\n      hums: {yes: almost certain}", "fault bearing-dry" },
        { "riders say: [it is an old pump]", "riders say: [it is an old pump, it was my father's]", "words" },
        { "riders ask: [how do I store the pump for winter]", "riders ask: [how do I store the pump for winter, where to put it in winter]", "words" },
        { "[smoke comes out of the pump]", "[smoke comes out of the pump, it smokes like a chimney]", "words" },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void Of_OneChange_NamesItAndNothingElse(string from, string to, string expected)
    {
        var changed = PumpEdits.Changed(from, to);
        Assert.Equal(expected, Told(Pump.Knowledge, changed));
        Assert.Equal(expected, Told(changed, Pump.Knowledge));
    }

    [Fact]
    public void Of_SeveralChanges_NamesThemInOrder()
    {
        var text = Pump.Text.Replace("    minutes: 2\n", "    minutes: 4\n", StringComparison.Ordinal).Replace("    minutes: 3\n", "    minutes: 5\n", StringComparison.Ordinal)
            .Replace("    minutes: 0.5\n", "    minutes: 1.5\n", StringComparison.Ordinal);
        Assert.Equal("check ask-tap, check feel-hose, check look-wheel", Told(Pump.Knowledge, Pump.Load(text)));
    }

    [Fact]
    public void Of_NewCause_NamesAllThatComesWithIt()
    {
        const string All = "fault strainer-blocked, finding strainer, check look-strainer, repair clean-strainer, words";
        Assert.Equal(All, Told(Pump.Knowledge, PumpEdits.WithStrainer));
        Assert.Equal(All, Told(PumpEdits.WithStrainer, Pump.Knowledge));
    }

    /// <summary>Where all chances are scaled to add up to so many faults at once, one cause's word moves every chance by the same factor: that alone is no difference of theirs.</summary>
    [Fact]
    public void Of_ChancesThatShareAScale_NamesTheCauseThatChangedAndThatTheRestIsRescaled()
    {
        var (old, @new) = (Scaled(Pump.Text), Scaled(Pump.Text.Replace("    how common: very common", "    how common: rare", StringComparison.Ordinal)));
        Assert.NotEqual(Prior(old, "hose-kinked"), Prior(@new, "hose-kinked"));
        Assert.Equal("fault tap-shut, rescaled", Told(old, @new));
        Assert.Equal("fault tap-shut, rescaled", Told(@new, old));
    }

    [Fact]
    public void Of_SameRules_IsEmpty()
    {
        var scope = TrialScopes.Of(new RulesPair(Pump.Knowledge, Pump.Load()));
        Assert.True(scope.IsEmpty);
        Assert.All(
            new[] { scope with { Faults = ["a"] }, scope with { Findings = ["a"] }, scope with { Complaints = ["a"] }, scope with { Checks = ["a"] }, scope with { Repairs = ["a"] }, scope with { Words = true }, scope with { Rescaled = true } },
            s => Assert.False(s.IsEmpty));
    }

    private static KnowledgeBase Scaled(string text) =>
        KnowledgeLoader.Load([RuleText.FromText("pump.yaml", text)], CompileOptions.Default with { FaultsAtOnce = 0.02 }).Knowledge!;

    private static double Prior(KnowledgeBase knowledge, string fault) => knowledge.Model.Faults[knowledge.Model.FaultAt(fault)].Prior;

    private static string Told(KnowledgeBase old, KnowledgeBase @new)
    {
        var scope = TrialScopes.Of(new RulesPair(old, @new));
        return string.Join(
            ", ",
            [
                .. scope.Faults.Select(f => $"fault {f}"), .. scope.Findings.Select(f => $"finding {f}"), .. scope.Complaints.Select(c => $"complaint {c}"),
                .. scope.Checks.Select(c => $"check {c}"), .. scope.Repairs.Select(r => $"repair {r}"), .. scope.Words ? new[] { "words" } : [], .. scope.Rescaled ? new[] { "rescaled" } : [],
            ]);
    }
}
