using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Which complaints are made, and which are said not to be so.</summary>
internal static class ComplaintEar
{
    /// <summary>The runs of statements in which a complaint is made.</summary>
    public static List<SpanReading> Choose(ImmutableArray<SpanReading> readings) =>
        SpanChooser.Choose([.. readings.Where(r => r.Mood == Mood.Present)], Hearing.Complaint);

    public static (ImmutableArray<Heard> Affirmed, ImmutableArray<string> Denied) Hear(ImmutableArray<SpanReading> readings, List<SpanReading> chosen)
    {
        var denials = readings.Where(r => r.Length == 1 && r.Mood == Mood.Present && !r.Matches.IsEmpty)
            .Select(r => (r.Start, Match: r.Matches.MaxBy(m => m.Denied)))
            .Where(d => d.Match.Denied >= Hearing.Denial)
            .ToList();
        // "They say that it slips. It does NOT slip": the later word counts, when it says that and nothing else.
        bool Revoked(SpanReading r, string meaning) =>
            denials.Exists(d => d.Match.Meaning == meaning && d.Match.Denied >= Hearing.BareDenial && d.Start > r.Start);

        var affirmed = chosen.Select(r => (Reading: r, Match: r.Matches.MaxBy(m => m.Affirmed)))
            .Where(c => !Revoked(c.Reading, c.Match.Meaning))
            .GroupBy(c => c.Match.Meaning)
            .Select(g => new Heard(g.Key, Rounded(g.Max(c => c.Match.Affirmed))))
            .OrderByDescending(h => h.Score).ThenBy(h => h.Id, StringComparer.Ordinal)
            .Where((h, i) => i == 0 || h.Score >= Hearing.FurtherComplaint)
            .ToImmutableArray();
        var denied = denials.Select(d => d.Match.Meaning)
            .Where(d => !affirmed.Any(h => h.Id == d))
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToImmutableArray();
        return (affirmed, denied);
    }

    internal static double Rounded(double score) => Math.Round(Math.Clamp(score, 0.001, 1), 3);
}
