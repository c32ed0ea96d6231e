using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>A rule together with the place where each of its words is written.</summary>
internal sealed record Written<T>(T Rule, MapNode Node, string File)
{
    /// <summary>Where the value behind the key stands; the rule itself when there is no such key.</summary>
    public Node At(string key) => Node[key] ?? Node;

    /// <summary>Where the key inside a map behind a key stands, as 'drags' in 'shows as'.</summary>
    public Node KeyAt(string key, string inner) =>
        Node[key] is MapNode map && map.Entries.FirstOrDefault(e => e.Key.Text == inner) is { } entry ? entry.Key : At(key);

    /// <summary>Where the innermost key stands, as 'yes' in 'drags' in 'shows as'.</summary>
    public Node KeyAt(string key, string inner, string innermost) =>
        Node[key] is MapNode map && map[inner] is MapNode last && last.Entries.FirstOrDefault(e => e.Key.Text == innermost) is { } entry
            ? entry.Key
            : KeyAt(key, inner);

    /// <summary>Where the n-th item of a list behind a key stands.</summary>
    public Node ItemAt(string key, int index) =>
        Node[key] is ListNode list && index < list.Items.Length ? list.Items[index] : At(key);
}

/// <summary>All rules as written, before anything is known to fit together. What could not be read of a rule is empty here, and was told.</summary>
internal sealed record Draft(
    ImmutableArray<Written<ComplaintRule>> Complaints,
    ImmutableArray<Written<FindingRule>> Findings,
    ImmutableArray<Written<FactRule>> Facts,
    ImmutableArray<Written<FaultRule>> Faults,
    ImmutableArray<Written<CheckRule>> Checks,
    ImmutableArray<Written<CoverRule>> Covers,
    ImmutableArray<Written<RepairRule>> Repairs,
    ImmutableArray<Written<HowToRule>> HowTos,
    ImmutableArray<Written<EmergencyRule>> Emergencies,
    ImmutableArray<Written<WordRule>> Words,
    ImmutableArray<Written<TriageRule>> Triages,
    ImmutableArray<Written<EitherRule>> Eithers,
    ImmutableArray<Written<ServiceRule>> Service);
