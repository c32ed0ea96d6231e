using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Whether something has to come before any coaching.</summary>
internal static class EmergencyEar
{
    public static string? Hear(ImmutableArray<Statement> statements, PhraseBook book) =>
        SpanChooser.ReadAll(statements, book)
            .Where(r => r.Mood == Mood.Present)
            .SelectMany(r => r.Matches)
            .Where(m => m.Told >= Hearing.Emergency)
            .OrderByDescending(m => m.Told).ThenByDescending(m => m.Affirmed).ThenBy(m => m.Meaning, StringComparer.Ordinal)
            .Select(m => m.Meaning)
            .FirstOrDefault();
}
