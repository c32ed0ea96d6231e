using System.Text;
using System.Text.Json;
using ShedBot.Reasoning.Exchange;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Reckoning;

/// <summary>What follows from one model and its answers.</summary>
/// <param name="SingleFault">Fault and P(fault | answers, exactly one fault), in the order of the model.</param>
/// <param name="UpToTwo">Fault and P(fault | answers, one or two faults).</param>
/// <param name="EvidenceProbability">P(answers | exactly one fault).</param>
/// <param name="ExpectedCost">Expected minutes of following the shipped rule from the first question on, by walking through everything that can happen.</param>
internal sealed record ReasonAnswer(
    string Id,
    IReadOnlyList<(string Fault, double Chance)> SingleFault,
    IReadOnlyList<(string Fault, double Chance)> UpToTwo,
    double EvidenceProbability,
    double ExpectedCost)
{
    private static readonly InferenceOptions Two = new(LargestSet: 2, RaiseTo: 2);

    /// <exception cref="ImpossibleEvidenceException">The answers cannot have come from the model.</exception>
    public static ReasonAnswer For(ModelLine line)
    {
        var single = Inferrer.InferSingle(line.Model, line.Evidence);
        return new(
            line.Id,
            Marginals(line.Model, single),
            Marginals(line.Model, Inferrer.Infer(line.Model, line.Evidence, Two)),
            Math.Exp(single.LogEvidence),
            PolicyCost.ExpectedCost(line.Model, CostWeights.MinutesOnly, Policy.Shipped));
    }

    /// <summary>One line; numbers in the shortest form that reads back to the same double.</summary>
    public string ToJson()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("id", Id);
            Write(json, "posterior_single_fault", SingleFault);
            Write(json, "posterior_up_to_two_faults_given_a_problem", UpToTwo);
            json.WriteNumber("evidence_probability_single_fault", EvidenceProbability);
            json.WriteNumber("expected_cost", ExpectedCost);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<(string Fault, double Chance)> chances)
    {
        json.WriteStartObject(name);
        foreach (var (fault, chance) in chances) json.WriteNumber(fault, chance);
        json.WriteEndObject();
    }

    private static IReadOnlyList<(string, double)> Marginals(DiagnosticModel model, Belief belief) =>
        [.. model.Faults.Select((fault, i) => (fault.Id, belief.Marginal(i)))];
}
