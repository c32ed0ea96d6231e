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
    /// <param name="mayBe">Whether the other words of the message leave it open that this emergency is meant.</param>
    /// <returns>All that are told, some of them more than once.</returns>
    public static IEnumerable<Match> Hear(ImmutableArray<Statement> statements, PhraseBook book, IReadOnlyCollection<SpanReading> troubles, Func<string, bool> mayBe)
    {
        var readings = SpanChooser.ReadAll(statements, book);
        return readings.Where(r => r.Mood == Mood.Present)
            .SelectMany(r => r.Matches.Select(m => (Reading: r, Match: m)))
            .Where(c => c.Match.Told >= Hearing.Emergency && mayBe(c.Match.Meaning))
            .Where(c => !troubles.Any(t => IsPlainTrouble(t, c.Reading, c.Match.Meaning, readings)))
            .Select(c => c.Match);
    }

    /// <summary>The one that is told best, and of two told alike the same each time.</summary>
    public static string? Plainest(IEnumerable<Match> heard) =>
        heard.OrderByDescending(m => m.Told).ThenByDescending(m => m.Affirmed).ThenBy(m => m.Meaning, StringComparer.Ordinal)
            .Select(m => m.Meaning)
            .FirstOrDefault();

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
