using System.Reflection;
using ShedBot.Coaching.Cases;
using ShedBot.Commands;
using ShedBot.Discord.Running;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Modelling;
using ShedBot.Storage;
using ShedBot.Trade.Keys;

namespace ShedBot.Tests.Architecture;

/// <summary>Arrows run downwards only: host, then Discord and Storage, Coaching, Knowledge, Reasoning; Trade under Coaching and Knowledge.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, Assembly> Ours = new(StringComparer.Ordinal)
    {
        ["ShedBot.Reasoning"] = typeof(DiagnosticModel).Assembly,
        ["ShedBot.Trade"] = typeof(WoodruffKey).Assembly,
        ["ShedBot.Knowledge"] = typeof(KnowledgeBase).Assembly,
        ["ShedBot.Coaching"] = typeof(Case).Assembly,
        ["ShedBot.Storage"] = typeof(LiteShedStore).Assembly,
        ["ShedBot.Discord"] = typeof(DiscordClubs).Assembly,
        ["ShedBot"] = typeof(ShedCommand).Assembly,
    };

    /// <summary>What each may refer to besides System.*; a name that ends in '.' stands for all below it.</summary>
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["ShedBot.Reasoning"] = [],
        ["ShedBot.Trade"] = ["UnitsNet"],
        ["ShedBot.Knowledge"] = ["ShedBot.Reasoning", "ShedBot.Trade", "YamlDotNet", "FuzzySharp", "Lucene.Net", "Lucene.Net."],
        // The quantities that the trade's formulas take and give are of UnitsNet.
        ["ShedBot.Coaching"] = ["ShedBot.Knowledge", "ShedBot.Reasoning", "ShedBot.Trade", "UnitsNet", "NodaTime", "Stateless"],
        ["ShedBot.Storage"] = ["ShedBot.Coaching", "ShedBot.Knowledge", "ShedBot.Reasoning", "LiteDB", "NodaTime"],
        // Days and times of the coaching are of NodaTime, for those who hand them on too.
        ["ShedBot.Discord"] =
        [
            "ShedBot.Coaching", "ShedBot.Knowledge", "ShedBot.Reasoning", "NodaTime", "Polly.Core", "SkiaSharp", "Microsoft.Extensions.",
        ],
        ["ShedBot"] =
        [
            "ShedBot.Discord", "ShedBot.Storage", "ShedBot.Coaching", "ShedBot.Knowledge", "ShedBot.Reasoning", "ShedBot.Trade",
            "NodaTime", "Microsoft.Extensions.", "Spectre.Console", "Spectre.Console.", "ScottPlot",
        ],
    };

    public static TheoryData<string> Projects => [.. Ours.Keys];

    [Theory]
    [MemberData(nameof(Projects))]
    public void References_OfEachProject_PointDownwardsOnly(string project) =>
        Assert.Empty(Forbidden(Ours[project], Allowed[project]));

    [Fact]
    public void References_HostHeldToTheRuleOfReasoning_AreFound() =>
        Assert.Contains("ShedBot.Coaching", Forbidden(Ours["ShedBot"], Allowed["ShedBot.Reasoning"]));

    /// <summary>Nothing that is loaded beside the host is missing from the list above.</summary>
    [Fact]
    public void References_OfTheHost_NameNoProjectThatIsNotHeld() =>
        Assert.All(
            Ours["ShedBot"].GetReferencedAssemblies().Where(a => a.Name!.StartsWith("ShedBot", StringComparison.Ordinal)),
            a => Assert.Contains(a.Name!, Ours.Keys));

    private static IEnumerable<string> Forbidden(Assembly assembly, string[] allowed) => assembly.GetReferencedAssemblies()
        .Select(a => a.Name!)
        .Where(n => !n.StartsWith("System.", StringComparison.Ordinal)
            && !allowed.Any(a => n == a || (a.EndsWith('.') && n.StartsWith(a, StringComparison.Ordinal))));
}
