using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Which complaints are made, and which are said not to be so.</summary>
internal static class ComplaintEar
{
    public static (ImmutableArray<Heard> Affirmed, ImmutableArray<string> Denied) Hear(ImmutableArray<Statement> statements, PhraseBook book)
    {
        var readings = SpanChooser.ReadAll(statements, book);
        var chosen = SpanChooser.Choose([.. readings.Where(r => r.Mood == Mood.Present)], Hearing.Complaint);
        var affirmed = chosen.Select(r => r.Matches.MaxBy(m => m.Affirmed))
            .GroupBy(m => m.Meaning)
            .Select(g => new Heard(g.Key, Rounded(g.Max(m => m.Affirmed))))
            .OrderByDescending(h => h.Score).ThenBy(h => h.Id, StringComparer.Ordinal)
            .ToImmutableArray();
        var denied = readings.Where(r => r.Length == 1 && r.Mood == Mood.Present)
            .Select(r => r.Matches.IsEmpty ? default : r.Matches.MaxBy(m => m.Denied))
            .Where(m => m.Denied >= Hearing.Denial && !affirmed.Any(h => h.Id == m.Meaning))
            .Select(m => m.Meaning)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToImmutableArray();
        return (affirmed, denied);
    }

    internal static double Rounded(double score) => Math.Round(Math.Clamp(score, 0.001, 1), 3);
}
