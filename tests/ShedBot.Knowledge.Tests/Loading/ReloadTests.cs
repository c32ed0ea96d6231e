using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Loading;

public class ReloadTests
{
    private static readonly RuleBase Current = RuleBase.Of([RuleText.FromText(LampRules.File, LampRules.Text)]);

    [Fact]
    public void From_BrokenRules_KeepsTheLastGoodAndSaysSo()
    {
        var reload = Reload.From(Current, [RuleText.FromText(LampRules.File, LampRules.Bent("tells: bulb-look", "tells: bulb-lok"))]);

        Assert.Same(Current, reload.Use);
        Assert.Equal(ReloadOutcome.KeptLastGood, reload.Outcome);
        Assert.Equal($"The changed rules have 1 error and are not used; the last good ones stay (version {Current.Knowledge!.Version}).", reload.Say());
        Assert.Contains("Did you mean 'bulb-look'?", Assert.Single(reload.Problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void From_ChangedRules_TakesThem()
    {
        var reload = Reload.From(Current, [RuleText.FromText(LampRules.File, LampRules.Bent("Carry a spare", "Carry two spares"))]);

        Assert.Equal(ReloadOutcome.Taken, reload.Outcome);
        Assert.NotEqual(Current.Knowledge!.Version, reload.Use.Knowledge!.Version);
    }

    [Fact]
    public void From_SameRules_ChangesNothing()
    {
        var reload = Reload.From(Current, [RuleText.FromText(LampRules.File, LampRules.Text)]);

        Assert.Same(Current, reload.Use);
        Assert.Equal(ReloadOutcome.Unchanged, reload.Outcome);
    }
}
