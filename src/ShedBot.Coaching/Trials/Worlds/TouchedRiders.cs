using System.Collections.Immutable;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Worlds;

/// <summary>Whom a change touches, as kinds of riders that can be drawn from one set of rules.</summary>
internal static class TouchedRiders
{
    /// <summary>With more kinds than this each would have too few riders to tell anything.</summary>
    public const int MostKinds = 24;

    private const int LikeliestCauses = 3;

    /// <param name="world">The rules that riders are drawn from.</param>
    /// <param name="other">The other ones.</param>
    /// <returns>Those with a changed cause, or with what a changed sign, check, repair or complaint is about. Empty when it is only words, or nothing.</returns>
    public static ImmutableArray<RidersWanted> Of(TrialScope scope, KnowledgeBase world, KnowledgeBase other)
    {
        ImmutableArray<RidersWanted> kinds =
        [
            .. scope.Faults.SelectMany(f => OfFault(f, world, other)),
            .. scope.Complaints.Where(world.Complaints.ContainsKey).Select(c => new RidersWanted(Complaint: c)),
            .. scope.Findings.SelectMany(f => Behind(world, f)),
            .. scope.Checks.SelectMany(c => Behind(world, (world.Checks.GetValueOrDefault(c) ?? other.Checks[c]).Tells)),
            .. scope.Repairs.SelectMany(r => (world.Repairs.GetValueOrDefault(r) ?? other.Repairs[r]).Mends.Keys.Order(StringComparer.Ordinal))
                .Where(world.Faults.ContainsKey).Select(f => new RidersWanted(With: f)),
        ];
        return [.. kinds.Distinct().Take(MostKinds)];
    }

    /// <summary>A cause that these rules do not list is met through the complaints that it gives.</summary>
    private static IEnumerable<RidersWanted> OfFault(string fault, KnowledgeBase world, KnowledgeBase other) => world.Faults.ContainsKey(fault)
        ? [new RidersWanted(With: fault)]
        : other.Faults[fault].ShowsAs.Keys.Where(world.Complaints.ContainsKey).Order(StringComparer.Ordinal).Select(c => new RidersWanted(Complaint: c));

    private static IEnumerable<RidersWanted> Behind(KnowledgeBase world, string finding)
    {
        if (!world.Findings.ContainsKey(finding)) return [];
        var model = world.Model;
        return model.Findings[model.FindingAt(finding)].Links
            .Where(l => l.Fault != KnowledgeBase.SomethingElse)
            .OrderByDescending(l => model.Faults[model.FaultAt(l.Fault)].Prior * l.Net.Skip(1).Sum()).ThenBy(l => l.Fault, StringComparer.Ordinal)
            .Take(LikeliestCauses)
            .Select(l => new RidersWanted(With: l.Fault));
    }
}
