using System.Text.Json;
using ShedBot.Reasoning.Exchange;
using ShedBot.Reasoning.Inference;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>
/// Against somebody else's code: bayesjs 0.6.5 (npm, MIT licence), a general-purpose library, its junction tree. How the file was made, and how to
/// make it again: docs/cross-check.
/// </summary>
public class CrossCheckTests(ITestOutputHelper output)
{
    [Fact]
    public void Infer_RandomNets_EqualsTheJunctionTreeOfBayesjs()
    {
        var (compared, worst) = (0, 0.0);
        foreach (var text in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Inference", "bayesjs-0.6.5.jsonl")))
        {
            var line = ModelLine.Read(text);
            var n = line.Model.Faults.Length;
            var belief = Inferrer.Infer(line.Model, line.Evidence, new(n, n));
            using var document = JsonDocument.Parse(text);
            foreach (var expected in document.RootElement.GetProperty("posterior_given_trouble").EnumerateObject())
            {
                Assert.Equal(expected.Value.GetDouble(), belief.Marginal(expected.Name), 1e-9);
                worst = Math.Max(worst, Math.Abs(expected.Value.GetDouble() - belief.Marginal(expected.Name)));
                compared++;
            }
        }

        output.WriteLine($"{compared} marginals compared, worst difference {worst:E1}.");
        Assert.True(compared > 200, $"{compared} compared");
    }
}
