using System.Collections.Immutable;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Tests.Layers;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Linting;

public class LintTests
{
    private static readonly LintCase[] Cases = [.. TextCases.All, .. MeaningCases.All, .. WorkCases.All, .. ServiceCases.All];

    public static TheoryData<int, string> Numbers
    {
        get
        {
            var data = new TheoryData<int, string>();
            for (var i = 0; i < Cases.Length; i++) data.Add(i, Cases[i].Code);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Run_RuleBroken_FiresOnItsLine(int number, string code)
    {
        var bad = Cases[number].Bad;

        var problems = Run(bad);

        var hits = problems.Where(p => p.Code == code).ToList();
        Assert.True(hits.Count > 0, $"{code} is silent; told were: {string.Join('\n', problems)}");
        Assert.Contains(hits, p => Line(bad, p).Contains(Cases[number].At, StringComparison.Ordinal));
        Assert.All(problems, p => Assert.InRange(p.Line, 1, bad.Split('\n').Length + 1));
        Assert.All(hits, p => Assert.True(p.What.EndsWith('.') && !p.ToString().Contains('\n', StringComparison.Ordinal), p.ToString()));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Run_RuleJustKept_IsSilent(int number, string code) =>
        Assert.DoesNotContain(Run(Cases[number].Good), p => p.Code == code);

    /// <summary>Two codes never come of a file: R097 of a change to a layer, R101 of knowledge that no layer can make; their tests are with those.</summary>
    [Fact]
    public void All_EveryCode_HasAPairOfTests() =>
        Assert.Equal(LintCatalogue.All.Select(r => r.Code), Cases.Select(c => c.Code).Concat(LayerCases.All.Select(c => c.Code)).Concat(["R097", "R101"]).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void All_EveryCode_IsExplainedOnce()
    {
        Assert.Equal(LintCatalogue.All.Length, LintCatalogue.All.Select(r => r.Code).Distinct().Count());
        Assert.All(LintCatalogue.All, r => Assert.True(r.Why.Length > 25 && r.Why[^1] is '.' or ')' && r.Title.Length > 5, r.Code));
        Assert.Equal("R021", LintCatalogue.Find("r021")?.Code);
        Assert.Null(LintCatalogue.Find("R999"));
    }

    [Fact]
    public void Load_OnlyWarnings_StillGivesKnowledge()
    {
        var result = LampRules.With("times: 6", "times: 1");

        Assert.Equal(Severity.Warning, Assert.Single(result.Problems).Severity);
        Assert.NotNull(result.Knowledge);
    }

    [Fact]
    public void Run_ManyErrorsInTwoFiles_TellsThemAllInOrder()
    {
        var first = RuleText.FromText("a.yaml", LampRules.Bent("tells: bulb-look", "tells: bulb-lok", "minutes: 5\n", "minutes: 999\n", "word: CAUTION", "word: CAREFUL"));
        var second = RuleText.FromText("b.yaml", "about: {covers: words}\nwordz: []\nbefore hands on: {ask: Ready}");

        var problems = Linter.Run([second, first]);

        Assert.Equal(problems.Order().Select(p => p.ToString()), problems.Select(p => p.ToString()));
        Assert.Superset(new HashSet<string> { "R013", "R014", "R021" }, problems.Where(p => p.File == "a.yaml").Select(p => p.Code).ToHashSet());
        Assert.Superset(new HashSet<string> { "R010", "R011", "R024", "R057" }, problems.Where(p => p.File == "b.yaml").Select(p => p.Code).ToHashSet());
    }

    [Fact]
    public void Run_OneFileUnreadable_DoesNotCallItsNamesMissing()
    {
        var halves = LampRules.Text.ReplaceLineEndings("\n").Split("\nfaults:");
        var about = "about: {covers: x, author: us, source: common practice, date: 2026-03-31}\n";

        var problems = Linter.Run([RuleText.FromText("a.yaml", halves[0] + "\n\"open"), RuleText.FromText("b.yaml", about + "faults:" + halves[1])]);

        Assert.Equal("R004", Assert.Single(problems).Code);
    }

    /// <summary>The one slip is told, and nothing of what follows from it.</summary>
    [Theory]
    [InlineData("      wire-run: {hanging: very likely}", "      wire-ran: {hanging: very likely}", "R021")]
    [InlineData("    shows as:\n      flickers: {yes: very likely}\n", "    show as:\n      flickers: {yes: very likely}\n", "R010 R011")]
    [InlineData("- id: dark", "- id: Dark", "R015 R021")]
    public void Run_OneSlip_TellsNoTailOfIt(string piece, string slip, string codes) =>
        Assert.Equal(codes, string.Join(' ', Run(LampRules.Bent(piece, slip)).Select(p => p.Code).Distinct().Order(StringComparer.Ordinal)));

    [Fact]
    public void ToString_Problem_ReadsLikeACompiler() =>
        Assert.Equal(
            "knowledge/lamp.yaml:81:12: error R021: the check 'look-at-bulb' tells 'bulb-lok', which is no finding or complaint. Did you mean 'bulb-look'?",
            Assert.Single(LampRules.With("tells: bulb-look", "tells: bulb-lok").Problems).ToString());

    private static ImmutableArray<Problem> Run(string text) => Linter.Run([RuleText.FromText(LampRules.File, text)]);

    private static string Line(string text, Problem problem)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        return problem.Line <= lines.Length ? lines[problem.Line - 1] : "";
    }
}
