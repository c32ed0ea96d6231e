using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Loading;

public class LampRulesTests
{
    [Fact]
    public void Load_GoodRules_HasNoProblem() => Assert.Empty(LampRules.Load().Problems.Select(p => p.ToString()));

    [Fact]
    public void Load_GoodRules_KeepsEveryWord()
    {
        var knowledge = LampRules.Knowledge();

        Assert.Equal(["dark", "flickers"], knowledge.Complaints.Keys);
        Assert.Equal("The wheel turns and there is no light at all.", knowledge.Complaints["dark"].InShort);
        Assert.Equal("no light at all|lamp is dead", string.Join('|', knowledge.Complaints["dark"].RidersSay));
        Assert.Equal(["clear", "black", "loose"], knowledge.Findings["bulb-look"].States.Select(s => s.Id));
        Assert.Equal("bulb is black", string.Join('|', knowledge.Findings["bulb-look"].States[1].RidersSay));
        Assert.StartsWith("It can get into the spokes", knowledge.Findings["wire-run"].States[1].StopRiding, StringComparison.Ordinal);
        Assert.Equal(90, knowledge.Facts["bulb-age"].KeepsForDays);
        Assert.Equal([6.0, 0.0], knowledge.Faults["bulb-burnt"].MovedBy.Select(m => m.Times));
        Assert.Equal("It hangs beside the fork", knowledge.Checks["follow-wire"].Answers["hanging"]);
        Assert.True(knowledge.Checks["look-at-bulb"].HandsOn);
        Assert.Equal("lamp-glass", knowledge.Repairs["fit-bulb"].Cover);
        Assert.Equal("It should stop firmly.", knowledge.Repairs["fit-bulb"].Steps[1].Note);
        Assert.Equal("screwdriver", string.Join('|', knowledge.Covers["lamp-glass"].Tools));
        Assert.Equal("WARNING", knowledge.Emergencies["lamp-smokes"].Caution.Word);
        Assert.True(knowledge.Emergencies["lamp-smokes"].EndsCoaching);
        Assert.Equal("lamp-smokes", knowledge.Triage.Dangers[0].Emergency);
        Assert.Equal("what bulb do I need", string.Join('|', knowledge.HowTos["which-bulb"].RidersAsk));
        Assert.Equal(["look-at-clip", "wipe-glass"], knowledge.Service.Keys);
        Assert.Equal("headlight|light", string.Join('|', knowledge.Words[0].RidersSay));
    }

    [Fact]
    public void Load_GoodRules_KeepsEveryWordOfAServiceTask()
    {
        var task = LampRules.Knowledge().Service["wipe-glass"];

        Assert.Equal("a clean lamp glass", task.Called);
        Assert.Equal("wipe the lamp glass", task.Does);
        Assert.Equal("Dust takes half the light.", task.Why);
        Assert.Equal(7, task.Minutes);
        Assert.Equal("low", task.Hazard);
        Assert.Equal("soft cloth", Assert.Single(task.Tools));
        Assert.Equal("NOTICE", Assert.Single(task.Cautions).Word);
        Assert.Equal(new RepairStep("Wipe the glass.", "A damp cloth does."), Assert.Single(task.Steps));
        Assert.Equal<Interval>([new(14, Measure.RidingDays), new(300, Measure.Kilometres)], task.Every.AsEnumerable());
        Assert.Equal(["fitted fit-bulb", "look-at-clip"], task.After.Select(a => string.Join(' ', a.Events)));
        Assert.Equal<Interval>([Interval.BeforeTheNextRide, new(10, Measure.Kilometres)], task.After[0].At.AsEnumerable());
        Assert.Equal(new Interval(1, Measure.RidingDays), Assert.Single(task.After[1].At));
        Assert.Equal("glass-kind: real-glass", string.Join('|', task.OnlyIf.Select(c => $"{c.Fact}: {string.Join(' ', c.Values)}")));
        Assert.Equal(new WeatherFactor("dusty", 3), Assert.Single(task.Sooner));
        Assert.Equal("fit-bulb", Assert.Single(task.DoneBy));
        Assert.Equal("dark", Assert.Single(task.Reveals));
        Assert.False(task.BeforeEachRide);
        Assert.True(LampRules.Knowledge().Service["look-at-clip"].BeforeEachRide);
    }

    [Fact]
    public void Load_GoodRules_TellsWhereEachComesFrom()
    {
        var origin = LampRules.Knowledge().Faults["bulb-burnt"].Origin;

        Assert.Equal("common practice", origin.Source);
        Assert.Equal("the made-up club", origin.Author);
        Assert.Equal(new DateOnly(2026, 3, 31), origin.Date);
        Assert.Equal(LampRules.File, origin.File);
        Assert.Equal(1 + LampRules.Text.ReplaceLineEndings("\n").Split('\n').ToList().FindIndex(l => l.Contains("id: bulb-burnt", StringComparison.Ordinal)), origin.Line);
    }

    [Fact]
    public void Load_ItemWithItsOwnSource_OverridesTheFiles() =>
        Assert.Equal("a printed manual, page 3", LampRules.With("how common: very common", "how common: very common\n    source: a printed manual, page 3").Knowledge!.Faults["bulb-burnt"].Origin.Source);
}
