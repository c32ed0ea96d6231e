using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace ShedBot.Benchmarks;

/// <summary>How the benchmarks of a class are run: briefly, within this process, with what they allocate and the 50th and 99th percentile.</summary>
/// <remarks>Within this process, because the runner's own build knows nothing of locked packages and takes longer than most of the measuring.</remarks>
/// <param name="strategy">Monitoring: one call a run, so that the percentiles are over calls.</param>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class ShortRunAttribute(RunStrategy strategy, int warmups, int runs) : Attribute, IConfigSource
{
    public RunStrategy Strategy => strategy;

    public int Warmups => warmups;

    public int Runs => runs;

    public IConfig Config { get; } = ManualConfig.CreateEmpty()
        .AddJob(Job.Default.WithId("Short").WithStrategy(strategy).WithLaunchCount(1).WithWarmupCount(warmups).WithIterationCount(runs)
            .WithToolchain(new InProcessEmitToolchain(TimeSpan.FromMinutes(20), true)))
        .AddColumn(new Percentile(50), new Percentile(99))
        .AddDiagnoser(MemoryDiagnoser.Default)
        .HideColumns(Column.Error, Column.StdDev, Column.Median, Column.RatioSD, Column.AllocRatio, Column.Gen0, Column.Gen1, Column.Gen2);
}
