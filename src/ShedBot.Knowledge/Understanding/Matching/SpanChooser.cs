using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>What a run of statements says of one book of phrases.</summary>
internal sealed record SpanReading(int Start, int Length, Mood Mood, ImmutableArray<Match> Matches);

/// <summary>
/// Settles which runs of statements are told as one: "when I pull the lever in, it keeps going" is one trouble, "it squeaks and it slips"
/// is two. Every run of up to <see cref="LongestSpan"/> statements is read; the best division is the one with the largest sum of
/// (score - what a complaint has to reach), found by dynamic programming, linear in the number of statements.
/// </summary>
internal static class SpanChooser
{
    public const int LongestSpan = 4;

    private const double WorthOfLength = 0.85;

    /// <summary>The statements of a long story that are read.</summary>
    public const int MostStatements = 80;

    public static ImmutableArray<SpanReading> ReadAll(ImmutableArray<Statement> statements, PhraseBook book, int longest = LongestSpan)
    {
        var count = Math.Min(statements.Length, MostStatements);
        var readings = ImmutableArray.CreateBuilder<SpanReading>();
        for (var start = 0; start < count; start++)
        {
            for (var length = 1; length <= longest && start + length <= count; length++)
            {
                var span = statements.Slice(start, length);
                if (length > 1 && !HoldTogether(span))
                    break;
                readings.Add(new SpanReading(start, length, span[0].Mood, [.. book.Compare(Features(span))]));
            }
        }
        return readings.ToImmutable();
    }

    /// <returns>The runs of the best division that reach <paramref name="threshold"/>, in the order of the message.</returns>
    public static List<SpanReading> Choose(ImmutableArray<SpanReading> readings, double threshold)
    {
        var end = readings.IsEmpty ? 0 : readings.Max(r => r.Start + r.Length);
        var best = new (double Sum, SpanReading? Last, int From)[end + 1];
        var byEnd = readings.ToLookup(r => r.Start + r.Length);
        for (var at = 1; at <= end; at++)
        {
            best[at] = (best[at - 1].Sum, null, at - 1);
            foreach (var reading in byEnd[at])
            {
                // What explains more of the message is worth more: else two halves always beat the whole.
                var gain = ((reading.Matches.IsEmpty ? 0 : reading.Matches.Max(m => m.Affirmed)) - threshold) * Math.Pow(reading.Length, WorthOfLength);
                if (gain >= 0 && best[reading.Start].Sum + gain > best[at].Sum)
                    best[at] = (best[reading.Start].Sum + gain, reading, reading.Start);
            }
        }
        var chosen = new List<SpanReading>();
        for (var at = end; at > 0; at = best[at].From)
        {
            if (best[at].Last is { } reading)
                chosen.Add(reading);
        }
        chosen.Reverse();
        return chosen;
    }

    /// <summary>What is both said and denied in one run is said: "slips in the wet, does not slip in the dry".</summary>
    private static List<Feature> Features(ImmutableArray<Statement> span)
    {
        var all = span.SelectMany(s => s.Features).ToHashSet();
        return [.. all.Where(f => !f.Denied || !all.Contains(f with { Denied = false }))];
    }

    private static bool HoldTogether(ImmutableArray<Statement> span) => span.All(s => s.Mood == span[0].Mood);
}
