using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Which findings or facts a rider volunteers. Strict: a wrong one misleads the reasoning, a missed one is only asked for.</summary>
internal static class StateEar
{
    private const int LongestSpan = 3;

    public static ImmutableArray<HeardState> Hear(ImmutableArray<Statement> statements, PhraseBook book) =>
    [
        .. SpanChooser.ReadAll(statements, book, LongestSpan)
            .Where(r => r.Mood == Mood.Present)
            .SelectMany(r => r.Matches)
            .Where(m => m.Told >= Hearing.State)
            .Select(m => (Parts: m.Meaning.Split(PhraseSource.Joint), m.Affirmed, m.Told))
            .GroupBy(m => m.Parts[0])
            .Select(g => g.OrderByDescending(m => m.Told).ThenByDescending(m => m.Affirmed).ThenBy(m => m.Parts[1], StringComparer.Ordinal).First())
            .Select(m => new HeardState(m.Parts[0], m.Parts[1], ComplaintEar.Rounded(m.Told)))
            .OrderBy(s => s.Subject, StringComparer.Ordinal),
    ];
}
