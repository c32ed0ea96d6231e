using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Rules;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
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
    public object Proposal() => LayeredRules.Load(under, LayerOf(++club));

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
        var layer = LayerOf(club);
        var load = LayeredRules.LoadKept(under, layer);
        return (layer, load, Listener.For(load.Knowledge!, listener));
    }

    /// <summary>An invented cause with all that belongs to it, of another name in each club, and a mend.</summary>
    private static Layer LayerOf(int club) => Layer.Read(RuleText.FromText(Layer.DefaultFile, $$$"""
        about: {covers: invented rules, author: a benchmark, source: common practice, date: 2026-05-01}
        findings:
          - {id: cap-{{{club}}}, means: how the cap sits, states: [{id: fine, says: Fine}, {id: gone, says: Gone}]}
        faults:
          - {id: cap-gone-{{{club}}}, is: the cap is gone, because: It fell off., how common: uncommon, shows as: {drags: {yes: likely}, cap-{{{club}}}: {gone: almost certain} } }
        checks:
          - {id: look-cap-{{{club}}}, tells: cap-{{{club}}}, ask: Is the cap there?, why: It falls off., minutes: 1, hands on: no, reliability: plain to see}
        repairs:
          - {id: new-cap-{{{club}}}, does: fit a cap, mends: {cap-gone-{{{club}}}: almost certain }, minutes: 5, steps: [{do: Fit it.}], prove: [Look at it.]}
        mends:
          - {of: fault, id: cover-screws-loose, key: how common, was: common, now: very common}
        """)).Layer!;
}
