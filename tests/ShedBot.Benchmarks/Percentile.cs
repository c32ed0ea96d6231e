using System.Globalization;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;

namespace ShedBot.Benchmarks;

/// <summary>A percentile over all measured runs, in milliseconds (nearest rank); none is left out as an outlier.</summary>
internal sealed class Percentile(int percent) : IColumn
{
    public string Id => $"p{percent.ToString(CultureInfo.InvariantCulture)}";

    public string ColumnName => $"{Id} [ms]";

    public bool AlwaysShow => true;

    public ColumnCategory Category => ColumnCategory.Statistics;

    public int PriorityInCategory => percent;

    public bool IsNumeric => true;

    public UnitType UnitType => UnitType.Dimensionless;

    public string Legend => $"Percentile {percent.ToString(CultureInfo.InvariantCulture)} over all measured runs, in milliseconds";

    public bool IsAvailable(Summary summary) => true;

    public bool IsDefault(Summary summary, BenchmarkCase benchmarkCase) => false;

    public string GetValue(Summary summary, BenchmarkCase benchmarkCase) => GetValue(summary, benchmarkCase, SummaryStyle.Default);

    public string GetValue(Summary summary, BenchmarkCase benchmarkCase, SummaryStyle style)
    {
        double[] all =
        [
            .. summary[benchmarkCase]?.AllMeasurements
                .Where(m => m is { IterationMode: IterationMode.Workload, IterationStage: IterationStage.Actual })
                .Select(m => m.Nanoseconds / m.Operations).Order() ?? Enumerable.Empty<double>(),
        ];
        if (all.Length == 0) return "-";
        var rank = Math.Clamp((int)Math.Ceiling(percent / 100.0 * all.Length) - 1, 0, all.Length - 1);
        return (all[rank] / 1e6).ToString("0.00", CultureInfo.InvariantCulture);
    }
}
