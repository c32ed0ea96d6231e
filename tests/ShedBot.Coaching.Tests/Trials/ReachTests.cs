using System.Globalization;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>Whether a stop can be come upon at all. Handing over costs 180 minutes with these rules, so a step that costs that is never taken.</summary>
public class ReachTests
{
    private const string LookWheel = "    minutes: 2\n    cover: lid\n    hazard: low", Lid = "    called: the lid (four screws)\n    minutes: 6";

    [Theory]
    [InlineData(LookWheel, LookWheel, true)]
    [InlineData(LookWheel, "    minutes: 2\n    cover: lid\n    hazard: medium", true)]
    [InlineData(LookWheel, "    minutes: 2\n    cover: lid\n    hazard: high", false)]
    [InlineData(LookWheel, "    minutes: 2\n    hazard: low", true)]
    [InlineData(Lid, "    called: the lid (four screws)\n    minutes: 179", true)]
    [InlineData(Lid, "    called: the lid (four screws)\n    minutes: 180", false)]
    [InlineData(", stop riding: A cracked wheel can fly apart. Pull the plug and leave it.}", "}", false)]
    public void Tells_AStop_IsSoWhereACheckMayBeCoachedAndPays(string from, string to, bool tells) => Assert.Equal(tells, Tells(PumpEdits.Changed(from, to), "wheel", "cracked"));

    /// <summary>A question costs patience on top of its minutes.</summary>
    [Theory]
    [InlineData(-0.5, true)]
    [InlineData(0, false)]
    public void Tells_ACheckAboutAsDearAsHelp_IsSoOnlyBelowItsPrice(double above, bool tells)
    {
        var minutes = (180 - CompileOptions.Default.Patience + above).ToString(CultureInfo.InvariantCulture);
        Assert.Equal(tells, Tells(PumpEdits.Changed(LookWheel, $"    minutes: {minutes}\n    cover: lid\n    hazard: low"), "wheel", "cracked"));
    }

    [Fact]
    public void Tells_WithASecondCheckThatPays_IsSoStill()
    {
        var dear = Pump.Text.Replace(LookWheel, "    minutes: 500\n    cover: lid\n    hazard: low", StringComparison.Ordinal);
        Assert.False(Tells(Pump.Load(dear), "wheel", "cracked"));
        var second = dear.Replace("\ncovers:\n", "\n  - id: peep-wheel\n    tells: wheel\n    ask: What do you see through the slot?\n    why: It may be seen from outside.\n    minutes: 1\n    hazard: none\n    hands on: no\n    reliability: easy to misread\n\ncovers:\n", StringComparison.Ordinal);
        Assert.True(Tells(Pump.Load(second), "wheel", "cracked"));
    }

    [Theory]
    [InlineData("wheel", "worn")]
    [InlineData("wheel", "missing")]
    [InlineData("nothing", "cracked")]
    public void Tells_WhatIsNoStop_IsNot(string finding, string state)
    {
        Assert.Null(Reach.Stop(Pump.Knowledge, finding, state));
        Assert.False(Tells(Pump.Knowledge, finding, state));
    }

    [Fact]
    public void Stop_OfAStop_IsTheState() => Assert.Equal("cracked", Reach.Stop(Pump.Knowledge, "wheel", "cracked")?.Id);

    private static bool Tells(KnowledgeBase knowledge, string finding, string state) => Reach.Tells(knowledge, finding, state, new CoachOptions());
}
