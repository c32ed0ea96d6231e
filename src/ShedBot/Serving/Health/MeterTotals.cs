using System.Collections.Concurrent;
using System.Diagnostics.Metrics;

namespace ShedBot.Serving.Health;

/// <summary>Adds up what a meter counts and times since the start. What the counts are divided by is left out: no ids can get in.</summary>
internal sealed class MeterTotals : IDisposable
{
    private readonly ConcurrentDictionary<string, Tally> tallies = new(StringComparer.Ordinal);
    private readonly MeterListener listener = new();

    public MeterTotals(string meter)
    {
        listener.InstrumentPublished = (instrument, listening) =>
        {
            if (instrument.Meter.Name != meter) return;
            var times = instrument.GetType().GetGenericTypeDefinition() == typeof(Histogram<>);
            listening.EnableMeasurementEvents(instrument, tallies.GetOrAdd(instrument.Name, _ => new Tally(times)));
        };
        listener.SetMeasurementEventCallback<double>((_, value, _, tally) => ((Tally)tally!).Add(value));
        listener.SetMeasurementEventCallback<long>((_, value, _, tally) => ((Tally)tally!).Add(value));
        listener.SetMeasurementEventCallback<int>((_, value, _, tally) => ((Tally)tally!).Add(value));
        listener.Start();
    }

    public SortedDictionary<string, double> Totals() =>
        new(tallies.Where(t => !t.Value.Times).ToDictionary(t => t.Key, t => t.Value.Read().Seconds), StringComparer.Ordinal);

    public SortedDictionary<string, Timed> Times() =>
        new(tallies.Where(t => t.Value.Times).ToDictionary(t => t.Key, t => t.Value.Read()), StringComparer.Ordinal);

    public void Dispose() => listener.Dispose();

    private sealed class Tally(bool times)
    {
        private readonly Lock gate = new();
        private long count;
        private double sum, most;

        public bool Times => times;

        public void Add(double value)
        {
            lock (gate)
            {
                count++;
                sum += value;
                most = Math.Max(most, value);
            }
        }

        public Timed Read()
        {
            lock (gate) return new Timed(count, sum, most);
        }
    }
}
