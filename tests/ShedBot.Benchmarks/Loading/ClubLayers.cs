using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Rules;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Benchmarks.Loading;

/// <summary>A club's own layer over the shipped rules: read, laid, linted, compiled, with its listener; and the strict way that a proposal goes.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 3, runs: 20)]
public class ClubLayers
{
    private RuleBase under = null!;
    private Listener listener = null!;
    private int club;

    [GlobalSetup]
    public void Setup()
    {
        under = RuleBase.Of(ClubRules.Files);
        listener = Listener.For(under.Knowledge!);
    }

    [Benchmark]
    public object PublishedEdition() => Load(under, listener, ++club);

    [Benchmark]
    public object Proposal() => LayeredRules.Load(under, ClubEditions.Cause(++club));

    /// <summary>What a thousand clubs, each with a cause of its own, keep beside the base.</summary>
    internal static (double KibibytesEach, double MillisecondsEach) Thousand()
    {
        var under = RuleBase.Of(ClubRules.Files);
        var listener = Listener.For(under.Knowledge!);
        Load(under, listener, 0);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var clubs = Enumerable.Range(1, 1000).Select(i => Load(under, listener, i)).ToImmutableArray();
        var spent = clock.Elapsed.TotalMilliseconds;
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        GC.KeepAlive(clubs);
        GC.KeepAlive((under, listener));
        return (kept / 1024.0 / clubs.Length, spent / clubs.Length);
    }

    private static (Layer, LayeredLoad, Listener) Load(RuleBase under, Listener listener, int club)
    {
        var layer = ClubEditions.Cause(club);
        var load = LayeredRules.LoadKept(under, layer);
        return (layer, load, Listener.For(load.Knowledge!, listener));
    }
}
