using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>The project's rules change under a club that has published its own.</summary>
public class BaseUpgradeTests
{
    private static readonly RuleKey Loose = new(RuleKind.Fault, "bulb-loose");

    private static readonly Layer Mended = Club("mends:\n  - {of: fault, id: bulb-loose, key: shows as / dark / yes, was: unlikely, now: likely}\n  - {of: complaint, id: dark, key: riders say, drop: lamp is dead}\n");

    [Fact]
    public void LoadKept_BaseChangesWhatIsMended_KeepsTheClubsWordAndTellsIt()
    {
        var load = LayeredRules.LoadKept(Upgraded("dark: {yes: unlikely}", "dark: {yes: very unlikely}", "- lamp is dead", "- lamp is quite dead"), Mended);

        Assert.Equal("likely", load.Knowledge!.Faults["bulb-loose"].ShowsAs["dark"]["yes"]);
        Assert.Equal(
            ["The project has changed 'riders say' of the complaint 'dark': it said 'lamp is dead' when the club changed it, and says nothing now. The club's word is kept: without 'lamp is dead'.",
                "The project has changed 'shows as / dark / yes' of the fault 'bulb-loose': it said 'unlikely' when the club changed it, and says 'very unlikely' now. The club's word is kept: 'likely'."],
            load.Conflicts.Select(c => c.ToString()));
        Assert.Empty(load.SetAside);
    }

    [Fact]
    public void StandByAndFollow_EveryConflict_IsSettled()
    {
        var now = Upgraded("dark: {yes: unlikely}", "dark: {yes: very unlikely}", "- lamp is dead", "- lamp is quite dead");
        var conflicts = LayeredRules.LoadKept(now, Mended).Conflicts;

        var stood = conflicts.Aggregate(Mended, (layer, c) => layer.Apply(now.StandBy(layer, c)).Layer!);
        var followed = conflicts.Aggregate(Mended, (layer, c) => layer.Apply(RuleBase.Follow(layer, c)).Layer!);

        Assert.Empty(LayeredRules.LoadKept(now, stood).Conflicts);
        Assert.Equal("likely", LayeredRules.LoadKept(now, stood).Knowledge!.Faults["bulb-loose"].ShowsAs["dark"]["yes"]);
        Assert.True(followed.IsEmpty);
    }

    [Fact]
    public void LoadKept_BaseComesToSayWhatTheClubSays_HasNoConflict()
    {
        var load = LayeredRules.LoadKept(Upgraded("dark: {yes: unlikely}", "dark: {yes: likely}"), Mended);

        Assert.Empty(load.Conflicts);
        Assert.Equal("R096", Assert.Single(load.Problems).Code);
    }

    [Fact]
    public void LoadKept_WholeRuleWrittenAnew_TellsWhenTheBasesChanges()
    {
        var layer = LampClub.Base.Settle(Layer.Empty.Apply([new PutRule(Loose, LampClub.Base.YamlOf(Loose)!.Replace("how common: common", "how common: rare", StringComparison.Ordinal) + "source: common practice\nauthor: Mod A\ndate: 2026-05-01\n")]).Layer!, Layer.Empty);
        var now = Upgraded("because: It touches its contact only now and then.", "because: It has worked loose.");

        Assert.Empty(LayeredRules.LoadKept(LampClub.Base, layer).Conflicts);
        var load = LayeredRules.LoadKept(now, layer);
        Assert.Equal("The project has changed the fault 'bulb-loose', which the club wrote anew. The club's own is used.", Assert.Single(load.Conflicts).ToString());
        Assert.Equal("rare", load.Knowledge!.Faults["bulb-loose"].HowCommon);
        Assert.Empty(LayeredRules.LoadKept(now, layer.Apply(now.StandBy(layer, load.Conflicts[0])).Layer!).Conflicts);
        Assert.True(layer.Apply(RuleBase.Follow(layer, load.Conflicts[0])).Layer!.IsEmpty);
        Assert.Equal(load.Conflicts[0], Assert.Single(LayeredRules.LoadKept(now, now.Settle(layer, layer)).Conflicts));
    }

    [Fact]
    public void LoadKept_BaseComesToHaveARuleOfTheSameName_KeepsTheClubsAndTellsIt()
    {
        var load = LayeredRules.LoadKept(Upgraded("concept: lamp, riders say: [headlight, light]}", "concept: lamp, riders say: [headlight, light]}\n  - {concept: bulb, riders say: [glow]}"), Club("words:\n  - {concept: bulb, riders say: [pear]}\n"));

        Assert.Equal("The project now has a word 'bulb' too. The club's own is used.", Assert.Single(load.Conflicts).ToString());
        Assert.Equal("pear", Assert.Single(load.Knowledge!.Words.Single(w => w.Concept == "bulb").RidersSay));
    }

    [Fact]
    public void LoadKept_BaseDropsWhatIsMended_SetsThatAsideAndGoesOn()
    {
        var now = Upgraded("id: bulb-loose", "id: bulb-slack", "{bulb-loose: almost certain}", "{bulb-slack: almost certain}");

        var load = LayeredRules.LoadKept(now, LampClub.Layer);

        Assert.Equal("Set aside: the mend of 'shows as / dark / yes' of the fault 'bulb-loose', because the base has no fault 'bulb-loose' to mend.", Assert.Single(load.SetAside).ToString());
        Assert.Contains("switch-worn", load.Knowledge!.Faults.Keys);
        Assert.Equal("very common", load.Knowledge.Faults["wire-off"].HowCommon);
    }

    /// <summary>An old part that does not fit must not hold up a new rule; once it is changed it has to fit.</summary>
    [Fact]
    public void Load_PartThatIsSetAsideAlready_HoldsUpNothing()
    {
        var now = Upgraded("id: bulb-loose", "id: bulb-slack", "{bulb-loose: almost certain}", "{bulb-slack: almost certain}");
        var aside = LayeredRules.LoadKept(now, LampClub.Layer).SetAside;
        var next = LampClub.Layer.Apply([new MendList(new(RuleKind.Complaint, "dark"), new("riders say"), "no shine", null, LampClub.Credit)]).Layer!;
        var touched = next.Apply([new MendValue(Loose, RulePath.Of("shows as", "dark", "yes"), "likely", "very likely", LampClub.Credit)]).Layer!;

        Assert.Null(LayeredRules.Load(now, next).Knowledge);
        Assert.NotNull(LayeredRules.Load(now, next, already: aside).Knowledge);
        Assert.Single(LayeredRules.Load(now, next, already: aside).SetAside);
        Assert.Null(LayeredRules.Load(now, touched, already: aside).Knowledge);
    }

    [Fact]
    public void LoadKept_ChainOfOwnRulesLosesItsFirstLink_GoesAsideTogether()
    {
        var layer = Club("checks:\n  - {id: glance, tells: wire-run, ask: How?, why: x, minutes: 1, hands on: no, reliability: plain to see, cover: tin}\ncovers:\n  - {id: tin, called: x, minutes: 1, how: [Lift it.]}\nmends:\n  - {of: finding, id: wire-run, key: seen anyway / slack, now: unlikely}\n");

        var load = LayeredRules.LoadKept(LampClub.Base, layer);

        Assert.Equal("'wire-run' has no state 'slack'.", Assert.Single(load.SetAside).Why);
        Assert.Contains("glance", load.Knowledge!.Checks.Keys);
    }

    /// <summary>The upgrade makes a state mean 'stop riding' in a finding that the club wrote anew without it: the project's counts.</summary>
    [Fact]
    public void LoadKept_UpgradeBringsAStop_TheClubsOlderWordDoesNotHideIt()
    {
        var key = new RuleKey(RuleKind.Finding, "bulb-look");
        var layer = LampClub.Base.Settle(Layer.Empty.Apply([new PutRule(key, LampClub.Base.YamlOf(key)!.Replace("Clear and whole", "All fine", StringComparison.Ordinal) + "source: common practice\nauthor: Mod A\ndate: 2026-05-01\n")]).Layer!, Layer.Empty);

        var load = LayeredRules.LoadKept(Upgraded("says: It wobbles in its socket", "says: It wobbles in its socket, stop riding: It may fall out."), layer);

        Assert.Equal("All fine", LayeredRules.LoadKept(LampClub.Base, layer).Knowledge!.Findings["bulb-look"].States[0].Says);
        Assert.Equal("It may fall out.", load.Knowledge!.Findings["bulb-look"].States[2].StopRiding);
        Assert.Contains("stop riding", Assert.Single(load.SetAside).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void FingerprintOf_SameRuleWrittenOtherwise_IsTheSame()
    {
        var again = Upgraded("{id: black, says: Black inside, riders say: [bulb is black]}", "\n          id: black\n          riders say: [\"bulb is black\"]\n          says: Black inside");
        var key = new RuleKey(RuleKind.Finding, "bulb-look");

        Assert.Equal(LampClub.Base.FingerprintOf(key), again.FingerprintOf(key));
        Assert.NotEqual(LampClub.Base.FingerprintOf(key), Upgraded("bulb is black", "bulb is dark").FingerprintOf(key));
        Assert.Null(again.FingerprintOf(new(RuleKind.Finding, "nowhere")));
    }

    private static RuleBase Upgraded(params string[] swaps) => RuleBase.Of([RuleText.FromText(LampRules.File, LampRules.Bent(swaps))]);

    private static Layer Club(string text) => LampClub.Of(LayerCase.About + text);
}
