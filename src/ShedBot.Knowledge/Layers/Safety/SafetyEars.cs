using ShedBot.Knowledge.Understanding;
using ShedBot.Knowledge.Understanding.Matching;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R107: whether the project's emergencies are still understood with the club's words and phrases.</summary>
internal static class SafetyEars
{
    public static IEnumerable<Weakening> Look(KnowledgeBase under, KnowledgeBase club)
    {
        if (PhraseSource.SameIn(under, club)) yield break;
        var (before, now) = (Listener.For(under), Listener.For(club));
        foreach (var rule in under.Emergencies.Values)
        {
            foreach (var phrase in rule.RidersSay)
            {
                if (now.Understand(phrase).Emergency is not null || before.Understand(phrase).Emergency is null) continue;
                yield return new Weakening(SafetyRules.Unheard, new RuleKey(RuleKind.Emergency, rule.Id),
                    $"'{phrase}' is not taken for the emergency '{rule.Id}' any more.", "Make the club's phrases fuller, or leave a word out.")
                {
                    Suspects = [.. Changed(under, club)],
                };
                break;
            }
        }
    }

    private static IEnumerable<RuleKey> Changed(KnowledgeBase under, KnowledgeBase club) =>
    [
        .. club.Words.Where(w => !under.Words.Contains(w)).Concat(under.Words.Where(w => !club.Words.Contains(w))).Select(w => new RuleKey(RuleKind.Word, w.Concept)).Distinct(),
        .. Differ(under.Complaints, club.Complaints, RuleKind.Complaint),
        .. Differ(under.HowTos, club.HowTos, RuleKind.HowTo),
        .. Differ(under.Emergencies, club.Emergencies, RuleKind.Emergency),
        .. Differ(under.Findings, club.Findings, RuleKind.Finding),
    ];

    private static IEnumerable<RuleKey> Differ<T>(IReadOnlyDictionary<string, T> under, IReadOnlyDictionary<string, T> club, RuleKind kind)
        where T : class =>
        club.Where(c => !under.TryGetValue(c.Key, out var rule) || !ReferenceEquals(rule, c.Value)).Select(c => c.Key)
            .Concat(under.Keys.Where(id => !club.ContainsKey(id)))
            .Select(id => new RuleKey(kind, id));
}
