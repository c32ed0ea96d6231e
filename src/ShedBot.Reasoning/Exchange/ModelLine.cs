using System.Collections.Immutable;
using System.Text.Json;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Exchange;

/// <summary>One line of a file of models: a model with its answers, and what an independent program computed for it where that is given.</summary>
/// <remarks>
/// <para>One JSON object a line. <c>id</c> and <c>model</c> are needed; <c>model</c> holds <c>faults</c> (id, prior), <c>checks</c> (id, cost in
/// minutes, leak, <c>p_yes</c>: net strength by fault, err {fp, fn}, cluster), <c>repairs</c> (id, cost, <c>fixes</c>: success by fault,
/// cluster), <c>clusters</c> (id, cost) and <c>help</c> (cost). The fault called <c>other</c> is 'something else'. Anything else is passed over.</para>
/// <para><c>answers</c>: check id to yes, no, unsure or cannot; the last two are no evidence. Costs are minutes: plan with
/// <see cref="CostWeights.MinutesOnly"/>.</para>
/// </remarks>
/// <param name="Evidence">The answers that say something, in the order they stand in.</param>
/// <param name="SingleFault">Fault to P(fault | answers, exactly one fault), where given.</param>
/// <param name="UpToTwo">Fault to P(fault | answers, one or two faults), where given.</param>
/// <param name="EvidenceProbability">P(answers | exactly one fault), where given.</param>
/// <param name="Costs">The expected costs that are given, by the name of their field, in minutes.</param>
public sealed record ModelLine(
    string Id,
    string Family,
    DiagnosticModel Model,
    ImmutableArray<Evidence> Evidence,
    ImmutableDictionary<string, double>? SingleFault,
    ImmutableDictionary<string, double>? UpToTwo,
    double? EvidenceProbability,
    ImmutableDictionary<string, double> Costs)
{
    /// <exception cref="FormatException">It cannot be read; the message names the field.</exception>
    public static ModelLine Read(string line)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            var root = new JsonField(document.RootElement, "line");
            var model = ModelFields.Read(root.Need("model"));
            return new(
                root.Need("id").Text(),
                root.Maybe("family")?.Text() ?? "",
                model,
                Answers(root.Maybe("answers"), model),
                root.Maybe("posterior_single_fault")?.Numbers(),
                root.Maybe("posterior_up_to_two_faults_given_a_problem")?.Numbers(),
                root.Maybe("evidence_probability_single_fault")?.Number(),
                root.Fields().Where(f => f.Name.EndsWith("_expected_cost", StringComparison.Ordinal))
                    .ToImmutableDictionary(f => f.Name, f => f.Value.Number()));
        }
        catch (JsonException e)
        {
            throw new FormatException($"This is not JSON: {e.Message}", e);
        }
        catch (ArgumentException e)
        {
            throw new FormatException($"line.model: {e.Message}", e);
        }
    }

    private static ImmutableArray<Evidence> Answers(JsonField? answers, DiagnosticModel model)
    {
        var evidence = ImmutableArray.CreateBuilder<Evidence>();
        foreach (var (check, value) in answers?.Fields() ?? [])
        {
            if (!model.Checks.Any(c => c.Id == check)) throw value.Wrong("answers a check that the model does not have");
            switch (value.Text())
            {
                case Finding.Yes or Finding.No:
                    evidence.Add(new CheckAnswered(check, value.Text()));
                    break;
                case "unsure" or "cannot":
                    break;
                default:
                    throw value.Wrong("must be yes, no, unsure or cannot");
            }
        }

        return evidence.ToImmutable();
    }
}
