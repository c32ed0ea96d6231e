using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R100, R101: emergencies, the question before hands-on work, and those that tell a danger from a mere trouble.</summary>
internal static class SafetyEmergencies
{
    public static IEnumerable<Weakening> Look(KnowledgeBase under, KnowledgeBase club)
    {
        foreach (var (id, rule) in under.Emergencies)
        {
            if (club.Emergencies.TryGetValue(id, out var now) && ReferenceEquals(rule, now)) continue;
            if (What(rule, now) is { } what)
                yield return new Weakening(SafetyRules.Emergency, new RuleKey(RuleKind.Emergency, id), $"the emergency '{id}' {what}", "Leave it as the project has it; you may add to it.");
        }

        if (!Same(under.Triage, club.Triage))
            yield return new Weakening(SafetyRules.Triage, new RuleKey(RuleKind.Emergency, ""), "the question before hands-on work is not the project's.", "It is the same in every club.");
        if (under.Eithers != club.Eithers && !under.Eithers.SequenceEqual(club.Eithers))
            yield return new Weakening(SafetyRules.Triage, new RuleKey(RuleKind.Emergency, ""), "the questions that tell a danger from a mere trouble are not the project's.", "They are the same in every club.");
    }

    private static string? What(EmergencyRule rule, EmergencyRule? now) =>
        now is null ? "is gone."
        : rule.RidersSay.FirstOrDefault(p => !now.RidersSay.Contains(p)) is { } phrase ? $"has lost its phrase '{phrase}'."
        : !SafetyWork.Keeps(now.Caution, rule.Caution) ? "has another caution, or a milder one."
        : !Goes(rule.DoNow, now.DoNow) ? "has lost something of what to do now, or its order."
        : rule.EndsCoaching && !now.EndsCoaching ? "would let the coaching go on."
        : null;

    /// <summary>All of it in the same order, whatever stands between.</summary>
    private static bool Goes(IEnumerable<string> lines, IEnumerable<string> now)
    {
        using var rest = now.GetEnumerator();
        foreach (var line in lines)
        {
            do
            {
                if (!rest.MoveNext()) return false;
            }
            while (rest.Current != line);
        }

        return true;
    }

    private static bool Same(TriageRule one, TriageRule other) => ReferenceEquals(one, other)
        || (one.Ask == other.Ask && one.Ready == other.Ready && one.NotYet == other.NotYet
            && one.Points.SequenceEqual(other.Points) && one.Dangers.SequenceEqual(other.Dangers));
}
