using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>
/// What a club's rules have in common with the base, taken from there and not made again: most of what a thousand clubs hold is then held once.
/// A rule is the same when it is the same object.
/// </summary>
internal sealed class Shared
{
    private readonly FrozenDictionary<(string Finding, string Fault), Link> links;

    /// <param name="from">The base's rules as written.</param>
    /// <param name="like">The same, compiled with <see cref="CompileOptions.Default"/>.</param>
    public Shared(Draft from, KnowledgeBase like)
    {
        From = from;
        Like = like;
        links = like.Model.Findings.SelectMany(f => f.Links.Select(l => (Key: (f.Id, l.Fault), Link: l))).ToFrozenDictionary(l => l.Key, l => l.Link);
    }

    public Draft From { get; }

    public KnowledgeBase Like { get; }

    /// <summary>What was learnt moves some numbers; with any other figure of its own a model has nothing in common with the base's.</summary>
    public static bool Fits(CompileOptions options) => options with { Learnt = null } == CompileOptions.Default;

    /// <returns>Null when the finding, the fault or the strength between them is another.</returns>
    public Link? LinkOf(object finding, string findingId, FaultRule fault, Learnt? learnt) =>
        Like.Faults.TryGetValue(fault.Id, out var same) && ReferenceEquals(same, fault) && IsSame(finding, findingId)
        && (learnt is null || !learnt.Links.Any(l => l.Fault == fault.Id && l.Finding == findingId))
            ? links.GetValueOrDefault((findingId, fault.Id))
            : null;

    public Check? CheckOf(CheckRule rule) =>
        Like.Checks.TryGetValue(rule.Id, out var same) && ReferenceEquals(same, rule) ? Like.Model.Checks[Like.Model.CheckAt(rule.Id)] : null;

    public Repair? RepairOf(RepairRule rule, Learnt learnt) =>
        Like.Repairs.TryGetValue(rule.Id, out var same) && ReferenceEquals(same, rule) && !learnt.Mends.Any(m => m.Repair == rule.Id)
            ? Like.Model.Repairs[Like.Model.RepairAt(rule.Id)]
            : null;

    /// <summary>The base's dictionary where nothing differs, else one that shares with it what it can.</summary>
    public static ImmutableSortedDictionary<string, T> ById<T>(
        ImmutableArray<Written<T>> rules, Func<T, string> id, ImmutableArray<Written<T>>? from, ImmutableSortedDictionary<string, T>? like)
        where T : class
    {
        if (like is null) return rules.ToImmutableSortedDictionary(r => id(r.Rule), r => r.Rule, StringComparer.Ordinal);
        if (rules == from) return like;
        var here = rules.Select(r => id(r.Rule)).ToHashSet(StringComparer.Ordinal);
        return like.RemoveRange(like.Keys.Where(k => !here.Contains(k)))
            .SetItems(rules.Where(r => !like.TryGetValue(id(r.Rule), out var same) || !ReferenceEquals(same, r.Rule)).Select(r => KeyValuePair.Create(id(r.Rule), r.Rule)));
    }

    private bool IsSame(object finding, string id) => finding switch
    {
        FindingRule => Like.Findings.TryGetValue(id, out var same) && ReferenceEquals(same, finding),
        _ => Like.Complaints.ContainsKey(id),
    };
}
