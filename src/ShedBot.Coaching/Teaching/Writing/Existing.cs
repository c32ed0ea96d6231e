using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What there is to pick from in the rules, by what a mechanic would call it.</summary>
internal static class Existing
{
    /// <summary>Of a name in a list.</summary>
    private const int MostSays = 95;

    public static ImmutableArray<Choice> Complaints(KnowledgeBase knowledge) => Sorted(knowledge.Complaints.Values.Select(c => new Choice(c.Id, Name(c.Called), c.InShort)));

    public static ImmutableArray<Choice> Findings(KnowledgeBase knowledge) => Sorted(knowledge.Findings.Values.Select(f =>
        new Choice(f.Id, Name(f.Means), string.Join("; ", f.States.Select(s => s.Says)))));

    /// <summary>All states but the normal one; of a complaint none, because it is there or not.</summary>
    public static ImmutableArray<Choice> Signs(KnowledgeBase knowledge, string finding) =>
        knowledge.Findings.TryGetValue(finding, out var rule) ? [.. rule.States.Skip(1).Select(s => new Choice(s.Id, Name(s.Says)))] : [];

    public static ImmutableArray<Choice> States(KnowledgeBase knowledge, string finding) =>
        knowledge.Findings.TryGetValue(finding, out var rule) ? [.. rule.States.Select(s => new Choice(s.Id, Name(s.Says)))] : [];

    public static ImmutableArray<Choice> Faults(KnowledgeBase knowledge) => Sorted(knowledge.Faults.Values
        .Where(f => f.Id != KnowledgeBase.SomethingElse).Select(f => new Choice(f.Id, Name(f.Is), f.Because)));

    public static ImmutableArray<Choice> Checks(KnowledgeBase knowledge) => Sorted(knowledge.Checks.Values.Select(c => new Choice(c.Id, Name(c.Ask), c.Why)));

    public static ImmutableArray<Choice> Covers(KnowledgeBase knowledge) => Sorted(knowledge.Covers.Values.Select(c => new Choice(c.Id, Name(c.Called))));

    public static ImmutableArray<Choice> Facts(KnowledgeBase knowledge) => Sorted(knowledge.Facts.Values.Select(f => new Choice(f.Id, Name(f.Called), f.Ask)));

    public static ImmutableArray<Choice> Values(KnowledgeBase knowledge, string fact) =>
        knowledge.Facts.TryGetValue(fact, out var rule) ? [.. rule.Values.Select(v => new Choice(v.Id, Name(v.Says)))] : [];

    public static ImmutableArray<Choice> Repairs(KnowledgeBase knowledge) => Sorted(knowledge.Repairs.Values.Select(r => new Choice(r.Id, Name(r.Does))));

    public static ImmutableArray<Choice> HowTos(KnowledgeBase knowledge) => Sorted(knowledge.HowTos.Values.Select(h => new Choice(h.Id, Name(h.Called), string.Join("; ", h.RidersAsk))));

    public static ImmutableArray<Choice> Words(KnowledgeBase knowledge) => Sorted(knowledge.Words.DistinctBy(w => w.Concept).Select(w => new Choice(w.Concept, Name(w.Concept), string.Join("; ", w.RidersSay))));

    public static ImmutableArray<Choice> Tasks(KnowledgeBase knowledge) => Sorted(knowledge.Service.Values.Select(s => new Choice(s.Id, Name(s.Called), s.Does)));

    public static ImmutableArray<Choice> Emergencies(KnowledgeBase knowledge) => Sorted(knowledge.Emergencies.Values.Select(e => new Choice(e.Id, Name(e.Called))));

    /// <summary>Phrases are picked by a short name, because they are too long to be one.</summary>
    public static ImmutableArray<Choice> Phrases(IEnumerable<string> phrases) => [.. phrases.Select(p => new Choice(Mark(p), Name(p)))];

    public static string Mark(string phrase) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(phrase)).AsSpan(0, 6));

    private static string Name(string text) => Say.Capital(CleanText.OneLine(text, MostSays));

    private static ImmutableArray<Choice> Sorted(IEnumerable<Choice> choices) => [.. choices.OrderBy(c => c.Says, StringComparer.OrdinalIgnoreCase)];
}
