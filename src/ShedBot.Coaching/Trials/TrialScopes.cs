using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Trials;

/// <summary>Finds what differs between old and new rules.</summary>
internal static class TrialScopes
{
    /// <summary>Ratios of chances that agree so closely are one common scale.</summary>
    private const double Rounding = 1e-6;

    public static TrialScope Of(RulesPair rules)
    {
        var (old, @new) = (rules.Old, rules.New);
        var scale = Scale(rules);
        return new TrialScope(
            Differing(Faults(old), Faults(@new), (a, b) => Same(a, b, scale)),
            Differing(old.Findings, @new.Findings, (a, b) => Same(a, b) && Leak(old, a.Id).SequenceEqual(Leak(@new, a.Id))),
            Differing(old.Complaints, @new.Complaints, (a, b) => a.RidersSay.SequenceEqual(b.RidersSay)),
            Differing(Checks(old), Checks(@new), (a, b) => a == b),
            Differing(Repairs(old), Repairs(@new), Same),
            !SameWords(old, @new),
            Math.Abs(scale - 1) > Rounding);
    }

    /// <summary>What the chances of most faults were multiplied by.</summary>
    private static double Scale(RulesPair rules)
    {
        var before = rules.Old.Model.Faults.ToDictionary(f => f.Id, f => f.Prior, StringComparer.Ordinal);
        var ratios = rules.New.Model.Faults.Where(f => !f.IsOther && before.ContainsKey(f.Id)).Select(f => f.Prior / before[f.Id]).Order().ToList();
        return ratios.Count == 0 ? 1 : ratios[ratios.Count / 2];
    }

    private static Dictionary<string, FaultSeen> Faults(KnowledgeBase knowledge)
    {
        var links = knowledge.Model.Findings.SelectMany(f => f.Links.Select(l => (l.Fault, Finding: f, Link: l))).ToLookup(l => l.Fault, StringComparer.Ordinal);
        return knowledge.Model.Faults.Where(f => !f.IsOther).ToDictionary(
            f => f.Id,
            f => new FaultSeen(
                f.Prior,
                links[f.Id].Select(l => string.Join(',', l.Finding.States.Zip(l.Link.Net).Select(s => FormattableString.Invariant($"{s.First}:{s.Second:R}")).Prepend(l.Finding.Id))).ToImmutableSortedSet(StringComparer.Ordinal),
                knowledge.Faults[f.Id].MovedBy.ToImmutableHashSet()),
            StringComparer.Ordinal);
    }

    private static Dictionary<string, (Check, bool)> Checks(KnowledgeBase knowledge) =>
        knowledge.Model.Checks.ToDictionary(c => c.Id, c => (c, knowledge.Checks[c.Id].HandsOn), StringComparer.Ordinal);

    private static Dictionary<string, Repair> Repairs(KnowledgeBase knowledge) => knowledge.Model.Repairs.ToDictionary(r => r.Id, r => r, StringComparer.Ordinal);

    private static ImmutableArray<double> Leak(KnowledgeBase knowledge, string finding) => knowledge.Model.Findings[knowledge.Model.FindingAt(finding)].Leak;

    private static bool Same(FaultSeen a, FaultSeen b, double scale) =>
        Math.Abs((b.Prior / (a.Prior * scale)) - 1) <= Rounding && a.Links.SetEquals(b.Links) && a.Moves.SetEquals(b.Moves);

    private static bool Same(FindingRule a, FindingRule b) => a.States.Length == b.States.Length
        && a.States.Zip(b.States).All(s => s.First.Id == s.Second.Id && s.First.StopRiding == s.Second.StopRiding && s.First.RidersSay.SequenceEqual(s.Second.RidersSay));

    private static bool Same(Repair a, Repair b) => a.Cost == b.Cost && a.Cover == b.Cover && a.Hazard == b.Hazard && a.Fixes.SequenceEqual(b.Fixes);

    private static bool SameWords(KnowledgeBase a, KnowledgeBase b) =>
        Phrases(a).SequenceEqual(Phrases(b));

    /// <summary>All that is listened for.</summary>
    private static IEnumerable<(string, string)> Phrases(KnowledgeBase knowledge) =>
    [
        .. knowledge.Complaints.Values.SelectMany(c => c.RidersSay.Select(p => (c.Id, p))),
        .. knowledge.Findings.Values.SelectMany(f => f.States.SelectMany(s => s.RidersSay.Prepend(s.Says).Select(p => ($"{f.Id}/{s.Id}", p)))),
        .. knowledge.Facts.Values.SelectMany(f => f.Values.SelectMany(v => v.RidersSay.Select(p => ($"{f.Id}/{v.Id}", p)))),
        .. knowledge.HowTos.Values.SelectMany(h => h.RidersAsk.Select(p => (h.Id, p))),
        .. knowledge.Emergencies.Values.SelectMany(e => e.RidersSay.Select(p => (e.Id, p))),
        .. knowledge.Words.SelectMany(w => w.RidersSay.Select(p => (w.Concept, p))),
    ];

    private static ImmutableArray<string> Differing<T>(IReadOnlyDictionary<string, T> old, IReadOnlyDictionary<string, T> @new, Func<T, T, bool> same) =>
    [
        .. old.Keys.Where(k => !@new.TryGetValue(k, out var other) || !same(old[k], other)).Concat(@new.Keys.Where(k => !old.ContainsKey(k))).Order(StringComparer.Ordinal),
    ];

    private sealed record FaultSeen(double Prior, ImmutableSortedSet<string> Links, ImmutableHashSet<ProfileCondition> Moves);
}
