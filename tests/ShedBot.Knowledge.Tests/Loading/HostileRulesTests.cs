using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsCheck;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Loading;

/// <summary>Whatever a file holds: it loads, or every problem has a place; it never throws.</summary>
public class HostileRulesTests
{
    /// <summary>Enough to find every slip that was put in on purpose while this was written; small enough for every build.</summary>
    private const int Rounds = 500;

    private static readonly string Good = LampRules.Text.ReplaceLineEndings("\n");

    private static readonly Gen<string> Scrap = Gen.OneOf<string>(
        "", " ", "\n", "  ", "    ", ":", ": ", "-", "- ", "[", "]", "{", "}", ",", "\"", "'", "|", ">-", "#", "&a ", "*a", "!x ", "%", "@", "`", "?", "? ", "---", "...", "~", "null", "<<: *a\n",
        "yes", "0", "-1", "1e999", "NaN", "almost certain", "id: x", "\t", "\0", "\u202E", "\uFEFF", "\uD83D\uDE00", "\r", "\u0085", "\u2028", "something-else", "states: [a, b]", "!!binary aGk=", "? [a]\n: b\n");

    [Fact]
    public void Load_TextsCutAndMixedAtRandom_NeverThrowsAndPlacesEveryProblem() =>
        Gen.Select(Gen.Int[0, Good.Length], Gen.Int[0, 40], Scrap).Array[1, 4]
            .Sample(cuts => IsSound(cuts.Aggregate(Good, (text, cut) =>
            {
                var at = Math.Min(cut.Item1, text.Length);
                return text[..at] + cut.Item3 + text[Math.Min(text.Length, at + cut.Item2)..];
            })), iter: Rounds);

    [Fact]
    public void Load_LinesMovedOrIndented_NeverThrowsAndPlacesEveryProblem() =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[0, 200], Gen.Int[0, 3]).Array[1, 3]
            .Sample(moves =>
            {
                var lines = Good.Split('\n').ToList();
                foreach (var (from, to, kind) in moves)
                {
                    var (a, b) = (from % lines.Count, to % lines.Count);
                    if (kind == 0) (lines[a], lines[b]) = (lines[b], lines[a]);
                    else if (kind == 1) lines[a] = "  " + lines[a];
                    else if (kind == 2) lines[a] = lines[a].TrimStart();
                    else lines.Insert(a, lines[b]);
                }

                return IsSound(string.Join('\n', lines));
            }, iter: Rounds);

    [Fact]
    public void Load_RandomBytes_NeverThrows() =>
        Gen.Byte.Array[0, 300].Sample(bytes => IsSound(new RuleText("x.yaml", bytes)), iter: Rounds);

    [Fact]
    public void Load_OneWordForAnother_NeverThrows() =>
        Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 10_000]).Sample(pick =>
        {
            var words = Good.Split(' ');
            words[pick.Item1 % words.Length] = words[pick.Item2 % words.Length];
            return IsSound(string.Join(' ', words));
        }, iter: Rounds);

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void Run_DeepNesting_IsRefusedQuickly(char bracket)
    {
        var clock = Stopwatch.StartNew();

        var problems = Linter.Run([RuleText.FromText("deep.yaml", "about: " + new string(bracket, 1_000_000))]);

        Assert.Contains(problems, p => p.Code is "R004" or "R006");
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), clock.Elapsed.ToString());
    }

    [Fact]
    public void Run_AliasesOfAliases_DoNotGrow()
    {
        var text = new StringBuilder("about: {covers: x}\na0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 40; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"a{i}: &a{i} [");
            text.AppendJoin(", ", Enumerable.Repeat($"*a{i - 1}", 9)).Append("]\n");
        }

        Assert.Contains(Linter.Run([RuleText.FromText("bomb.yaml", text.ToString())]), p => p.Code == "R005");
    }

    /// <summary>Ten thousand lines are about four hundred faults with a finding, a check and a repair each: ten times what a club is likely to write.</summary>
    [Fact]
    public void Load_TenThousandLines_TakesSeconds()
    {
        var text = ManyRules(420);
        Assert.InRange(text.Split('\n').Length, 10_000, 20_000);
        var clock = Stopwatch.StartNew();

        var result = KnowledgeLoader.Load([RuleText.FromText("many.yaml", text)]);

        Assert.Empty(result.Problems.Select(p => p.ToString()));
        Assert.Equal(424, result.Knowledge!.Model.Faults.Length);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10), clock.Elapsed.ToString());
    }

    private static bool IsSound(string text) => IsSound(RuleText.FromText("x.yaml", text));

    private static bool IsSound(RuleText file)
    {
        var result = KnowledgeLoader.Load([file]);
        var lines = 2 + Encoding.UTF8.GetString(file.Bytes.Span).Split('\n', '\r', '\u0085', '\u2028', '\u2029').Length;
        return (result.Knowledge is null) == result.Problems.Any(p => p.Severity == Severity.Error)
            && result.Problems.All(p => p.Line >= 1 && p.Line <= lines && p.Column >= 1 && p.What.Length > 10);
    }

    private static string ManyRules(int count)
    {
        var findings = new StringBuilder();
        var (faults, checks, repairs) = (new StringBuilder(), new StringBuilder(), new StringBuilder());
        for (var i = 0; i < count; i++)
        {
            findings.Append(CultureInfo.InvariantCulture, $"  - id: look-{i}\n    means: how part {i} looks\n    states:\n      - id: fine\n        says: Fine\n      - id: bent\n        says: Bent\n");
            faults.Append(CultureInfo.InvariantCulture, $"  - id: part-{i}\n    is: part {i} is bent\n    because: It was hit.\n    how common: rare\n    shows as:\n      dark: {{yes: unlikely}}\n      look-{i}: {{bent: likely}}\n");
            checks.Append(CultureInfo.InvariantCulture, $"  - id: see-{i}\n    tells: look-{i}\n    ask: How does part {i} look?\n    why: It bends.\n    minutes: 1\n    hands on: no\n    reliability: plain to see\n");
            repairs.Append(CultureInfo.InvariantCulture, $"  - id: bend-{i}\n    does: bend part {i} back\n    mends: {{part-{i}: likely}}\n    minutes: 5\n    steps:\n      - do: Bend it.\n    prove: [Look at it]\n");
        }

        return LampRules.Bent("\nfacts:", findings + "\nfacts:", "\nchecks:", faults + "\nchecks:", "\ncovers:", checks + "\ncovers:", "\nhow to:", repairs + "\nhow to:");
    }
}
