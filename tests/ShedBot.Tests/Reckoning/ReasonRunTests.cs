using System.Globalization;
using System.Text.Json;
using ShedBot.Reckoning;
using Xunit.Abstractions;

namespace ShedBot.Tests.Reckoning;

public sealed class ReasonRunTests(ITestOutputHelper output)
{
    /// <summary>Two causes, one perfect check, by hand: the answer 'yes' leaves only a.</summary>
    private const string Good = """
        {"id":"m","model":{"faults":[{"id":"a","prior":0.3},{"id":"b","prior":0.1}],
        "checks":[{"id":"c","cost":1,"leak":0,"p_yes":{"a":0.5},"cluster":null}],
        "repairs":[{"id":"ra","cost":10,"fixes":{"a":1},"cluster":null},{"id":"rb","cost":10,"fixes":{"b":1},"cluster":null}],
        "clusters":[],"help":{"cost":100}},"answers":{"c":"yes"}}
        """;

    [Fact]
    public async Task Run_ASmallModel_GivesWhatAHandSumGives()
    {
        var (bad, lines, _) = await RunAsync(Good.ReplaceLineEndings(""));
        Assert.Equal(0, bad);
        using var answer = JsonDocument.Parse(Assert.Single(lines));
        Assert.Equal("m", answer.RootElement.GetProperty("id").GetString());
        Assert.Equal(1, Number(answer, "posterior_single_fault", "a"), 12);
        Assert.Equal(0, Number(answer, "posterior_single_fault", "b"), 12);
        // Exactly one fault, in proportion to the priors: a with 0.3 / 0.4, and it shows with chance one half.
        Assert.Equal(0.375, answer.RootElement.GetProperty("evidence_probability_single_fault").GetDouble(), 12);
    }

    [Fact]
    public async Task Run_BadLines_NamesLineAndFieldAndGoesOn()
    {
        var (bad, lines, errors) = await RunAsync("{\"id\":\"x\"}\n\nnot json\n" + Good.ReplaceLineEndings(""));
        Assert.Equal(2, bad);
        Assert.Single(lines);
        Assert.Contains("line 1: line.model is missing", errors, StringComparison.Ordinal);
        Assert.Contains("line 3: ", errors, StringComparison.Ordinal);
        Assert.Contains("2 of 4 lines", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_AnswersThatCannotBe_AreReported()
    {
        var impossible = Good.ReplaceLineEndings("").Replace("\"a\":0.5", "\"a\":0", StringComparison.Ordinal);
        var (bad, lines, errors) = await RunAsync(impossible);
        Assert.Equal(1, bad);
        Assert.Empty(lines);
        Assert.StartsWith("line 1: ", errors, StringComparison.Ordinal);
    }

    /// <summary>The values in the file were computed by an independent exact program from the published theory.</summary>
    [Fact]
    public async Task Run_SharedModels_AgreesWithTheIndependentProgram()
    {
        if (Find() is not { } file)
        {
            output.WriteLine("The shared models are not here, so nothing was compared: put shared/diagnosis/models.jsonl beside the project, or set SHEDBOT_SHARED.");
            return;
        }

        // The large family takes seconds each to enumerate; two of it are enough here.
        var given = File.ReadLines(file).Where(l => l.Length > 0).ToList();
        var some = given.Where(l => !Family(l).Equals("big", StringComparison.Ordinal)).Concat(given.Where(l => Family(l) == "big").Take(2)).ToList();
        var (bad, lines, _) = await RunAsync(string.Join('\n', some));
        Assert.Equal(0, bad);
        Assert.Equal(some.Count, lines.Length);
        foreach (var (expected, received) in some.Zip(lines))
        {
            using var e = JsonDocument.Parse(expected);
            using var r = JsonDocument.Parse(received);
            foreach (var field in new[] { "posterior_single_fault", "posterior_up_to_two_faults_given_a_problem" })
            {
                foreach (var fault in e.RootElement.GetProperty(field).EnumerateObject())
                    Assert.Equal(fault.Value.GetDouble(), Number(r, field, fault.Name), 1e-9);
            }

            Assert.Equal(
                e.RootElement.GetProperty("evidence_probability_single_fault").GetDouble(),
                r.RootElement.GetProperty("evidence_probability_single_fault").GetDouble(),
                1e-9);
            var (cost, optimum) = (r.RootElement.GetProperty("expected_cost").GetDouble(), e.RootElement.GetProperty("optimal_expected_cost").GetDouble());
            Assert.InRange(cost / optimum, 1 - 1e-9, 1.05);
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{some.Count} models compared."));
    }

    private static string Family(string line)
    {
        using var document = JsonDocument.Parse(line);
        return document.RootElement.GetProperty("family").GetString()!;
    }

    private static double Number(JsonDocument document, string field, string fault) =>
        document.RootElement.GetProperty(field).GetProperty(fault).GetDouble();

    private static async Task<(int Bad, string[] Lines, string Errors)> RunAsync(string input)
    {
        var (answers, errors) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var bad = await ReasonRun.RunAsync(new StringReader(input), answers, errors, CancellationToken.None);
        return (bad, answers.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries), errors.ToString());
    }

    private static string? Find()
    {
        var places = new List<string>();
        if (Environment.GetEnvironmentVariable("SHEDBOT_SHARED") is { Length: > 0 } named) places.Add(named);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            places.Add(Path.Combine(folder.FullName, "shared"));
        return places.Select(place => Path.Combine(place, "diagnosis", "models.jsonl")).FirstOrDefault(File.Exists);
    }
}
