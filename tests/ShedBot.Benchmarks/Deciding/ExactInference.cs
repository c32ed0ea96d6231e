using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Rules;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Benchmarks.Deciding;

/// <summary>The belief after a complaint and five answers, beside a plain sum over every set of faults. The plain sum doubles with each fault.</summary>
[ShortRun(RunStrategy.Throughput, warmups: 2, runs: 6)]
public class ExactInference
{
    private DiagnosticModel model = null!;
    private ImmutableArray<Evidence> evidence;

    /// <summary>The club's commonest faults, so many of them.</summary>
    [Params(8, 16)]
    public int Faults { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var whole = ClubRules.Load(1).Model;
        var kept = whole.Faults.OrderByDescending(f => f.Prior).ThenBy(f => f.Id, StringComparer.Ordinal).Take(Faults).Select(f => f.Id).ToHashSet();
        model = MachineContext.Apply(whole, [], whole.Faults.Select(f => f.Id).Where(f => !kept.Contains(f)));
        var most = model.Findings.OrderByDescending(f => f.Links.Length).ThenBy(f => f.Id, StringComparer.Ordinal).Take(6);
        evidence = [.. most.Select((f, i) => new FindingTold(f.Id, f.States[i % 2], AnswerError.Even(0.05)))];
        var (ours, plain) = (Bounded().Marginal(0), Plain()[0]);
        if (Math.Abs(ours - plain) > 0.02) throw new InvalidOperationException($"The two disagree: {ours} and {plain}.");
    }

    [Benchmark(Baseline = true)]
    public double[] Plain() => PlainSum.Marginals(model, evidence);

    /// <summary>Pairs, raised to triples where they matter: what the coach uses.</summary>
    [Benchmark]
    public Belief Bounded() => Inferrer.Infer(model, evidence);

    /// <summary>Every set of faults, as the plain sum does.</summary>
    [Benchmark]
    public Belief Unbounded() => Inferrer.Infer(model, evidence, new InferenceOptions(LargestSet: Faults, MaxSets: 1 << 20));
}
