using System.Collections.Immutable;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R107: the reserved words by which the listener tells an emergency from talk of one. No exact phrase would show what they hide.</summary>
internal static class SafetyWords
{
    public static IEnumerable<Weakening> Look(KnowledgeBase under, KnowledgeBase club)
    {
        if (under.Words == club.Words) yield break;
        var (before, now) = (Signs(under, under), Signs(club, under));
        foreach (var concept in before.Keys.Union(now.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var (was, says) = (before.GetValueOrDefault(concept, []), now.GetValueOrDefault(concept, []));
            if (!was.SetEquals(says))
                yield return new Weakening(SafetyRules.Unheard, new RuleKey(RuleKind.Word, concept), $"the word '{concept}' says when an emergency of the project's is meant, and the club has changed it.", "Leave it as the project has it.");
        }
    }

    private static Dictionary<string, ImmutableHashSet<string>> Signs(KnowledgeBase rules, KnowledgeBase under) => rules.Words
        .Where(w => Understanding.Matching.Signs.IsSign(w, under))
        .GroupBy(w => w.Concept, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.SelectMany(w => w.RidersSay).ToImmutableHashSet(StringComparer.Ordinal), StringComparer.Ordinal);
}
