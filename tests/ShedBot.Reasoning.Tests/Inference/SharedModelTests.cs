using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Tests.Exchange;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>Against values that a program of other hands computed exactly from the published theory (two-level noisy-OR, Pearl 1988; Henrion 1989).</summary>
public class SharedModelTests(ITestOutputHelper output)
{
    private const double Close = 1e-9;

    [Fact]
    public void InferSingle_SharedModels_EqualIndependentValues()
    {
        var models = SharedModels.Read(output.WriteLine);
        foreach (var line in models)
        {
            var belief = Inferrer.InferSingle(line.Model, line.Evidence);
            foreach (var (fault, expected) in line.SingleFault!) Assert.Equal(expected, belief.Marginal(fault), Close);
            Assert.Equal(line.EvidenceProbability!.Value, Math.Exp(belief.LogEvidence), Close);
        }

        output.WriteLine($"{models.Count} models compared.");
    }

    [Fact]
    public void Infer_SharedModelsUpToTwoFaults_EqualIndependentValues()
    {
        foreach (var line in SharedModels.Read(output.WriteLine))
        {
            var belief = Inferrer.Infer(line.Model, line.Evidence, new(LargestSet: 2, RaiseTo: 2));
            foreach (var (fault, expected) in line.UpToTwo!) Assert.Equal(expected, belief.Marginal(fault), Close);
        }
    }
}
