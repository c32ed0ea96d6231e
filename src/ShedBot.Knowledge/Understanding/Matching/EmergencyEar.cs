using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>
/// Whether something has to come before any coaching. Each phrase of an emergency is a pattern: all its words have to be said within one
/// run of statements, in any order, among whatever else.
/// </summary>
internal static class EmergencyEar
{
    /// <param name="statements">The message, with <see cref="Signs.RidingNow"/> in each statement where it holds.</param>
    /// <param name="troubles">The plain troubles that are heard.</param>
    /// <param name="excluded">Emergencies that other words of the message speak against.</param>
    public static string? Hear(ImmutableArray<Statement> statements, PhraseBook book, IReadOnlyCollection<SpanReading> troubles, IReadOnlySet<string> excluded)
    {
        var readings = SpanChooser.ReadAll(statements, book);
        return readings.Where(r => r.Mood == Mood.Present)
            .SelectMany(r => r.Matches.Select(m => (Reading: r, Match: m)))
            .Where(c => c.Match.Told >= Hearing.Emergency && !excluded.Contains(c.Match.Meaning))
            .Where(c => !troubles.Any(t => IsPlainTrouble(t, c.Reading, c.Match.Meaning, readings)))
            .OrderByDescending(c => c.Match.Told).ThenByDescending(c => c.Match.Affirmed).ThenBy(c => c.Match.Meaning, StringComparer.Ordinal)
            .Select(c => c.Match.Meaning)
            .FirstOrDefault();
    }

    /// <summary>A wheel that locks as the clutch is let out is an engine that will not turn: the trouble accounts for more of the same words.</summary>
    private static bool IsPlainTrouble(SpanReading trouble, SpanReading danger, string meaning, ImmutableArray<SpanReading> readings)
    {
        if (trouble.Start > danger.Start || trouble.Start + trouble.Length < danger.Start + danger.Length || trouble.Length == danger.Length)
            return false;
        var whole = readings.FirstOrDefault(r => r.Start == trouble.Start && r.Length == trouble.Length);
        var asDanger = whole is null ? 0 : whole.Matches.Where(m => m.Meaning == meaning).Select(m => m.Affirmed).FirstOrDefault();
        return trouble.Matches.Max(m => m.Affirmed) > Math.Max(Hearing.PlainTrouble, asDanger);
    }
}
