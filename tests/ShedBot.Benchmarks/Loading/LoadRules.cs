using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Rules;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Benchmarks.Loading;

/// <summary>From the bytes of the rule files to checked and compiled rules, and from there to a listener.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 2, runs: 8)]
public class LoadRules
{
    private ImmutableArray<RuleText> files;
    private KnowledgeBase knowledge = null!;

    /// <inheritdoc cref="Deciding.TurnDecision.RulesTimes"/>
    [Params(1, 10)]
    public int RulesTimes { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        files = ClubRules.FilesTimes(RulesTimes);
        knowledge = ClubRules.Load(RulesTimes);
    }

    [Benchmark]
    public object LoadLintAndCompile() => KnowledgeLoader.Load(files);

    [Benchmark]
    public object ListenerForAllPhrases() => Listener.For(knowledge);
}
