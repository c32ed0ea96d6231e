using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Words that were not understood, as several members or one wrote them.</summary>
/// <param name="Key">What is the same however they are written. Not to be shown.</param>
/// <param name="Words">As the last one wrote them, on one line, with what is private taken out; see <see cref="Discreet"/>.</param>
/// <param name="Phrase">The same as it could be taught; empty when nothing is left of it.</param>
/// <param name="Written">The words in every writing that is kept. Not to be shown.</param>
/// <param name="Expected">What was asked then, as ids; see <see cref="UnheardWords.Expected"/>.</param>
/// <param name="Times">How often.</param>
/// <param name="Members">By how many members.</param>
/// <param name="MayMean">What they may mean, likeliest first; for a moderator to choose from.</param>
public sealed record UnheardRow(
    string Key,
    string Words,
    string Phrase,
    ImmutableArray<string> Written,
    ImmutableArray<string> Expected,
    int Times,
    int Members,
    DateTimeOffset Last,
    ImmutableArray<HeardGuess> MayMean)
{
    /// <summary>Only one member wrote so: the words may be nobody else's, and may give away who it was.</summary>
    public bool OfOneMember => Members < 2;
}

/// <summary>Ranks the words that were not understood: the same words of several members first. What the rules of today would understand is left out.</summary>
/// <param name="rules">The rules of today.</param>
/// <param name="listener">That of these rules.</param>
/// <param name="before">That of the project's rules alone; the same where the club changes no words.</param>
public sealed class UnheardReport(KnowledgeBase rules, Listener listener, Listener before)
{
    private const int Guesses = 3;

    private readonly Discreet discreet = new(rules);
    private readonly HeardNow heard = new(rules, listener, before);

    /// <summary>All of them; those that are not looked at cost nothing.</summary>
    public IEnumerable<UnheardRow> Rows(IEnumerable<UnheardWords> unheard) => unheard
        .GroupBy(u => PlainWords.Folded(u.Words), StringComparer.Ordinal)
        .Where(g => g.Key.Length > 0)
        .Select(g => (g.Key, All: g.OrderByDescending(u => u.At).ThenBy(u => u.Words, StringComparer.Ordinal).ToList(), Members: g.Select(u => u.Member).Distinct().Count()))
        .OrderByDescending(g => g.Members).ThenByDescending(g => g.All.Count).ThenByDescending(g => g.All[0].At).ThenBy(g => g.All[0].Words, StringComparer.Ordinal)
        .Where(g => !heard.Are(g.All[0]))
        .Select(g => new UnheardRow(
            g.Key,
            discreet.Shown(g.All[0].Words),
            discreet.Bare(g.All[0].Words),
            [.. g.All.Select(u => u.Words).Distinct(StringComparer.Ordinal)],
            [.. g.All.Select(u => u.Expected).Distinct().Order(StringComparer.Ordinal)],
            g.All.Count,
            g.Members,
            g.All[0].At,
            listener.Guess(g.All[0].Words, Guesses)));
}
