using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>What the known facts of one bike do to the chances of its faults.</summary>
/// <param name="Shifts">By fault id, in the order of the facts; several facts may move the same fault, and then their odds multiply.</param>
/// <param name="Removed">Faults that this bike cannot have, by id.</param>
public sealed record MachineProfile(ImmutableArray<ContextShift> Shifts, ImmutableArray<string> Removed)
{
    /// <param name="known">Fact id to value id. A fact or value that the rules do not know, as after a change of the rules, moves nothing.</param>
    public static MachineProfile Of(KnowledgeBase knowledge, IReadOnlyDictionary<string, string> known)
    {
        var met = knowledge.Faults.Values
            .SelectMany(f => f.MovedBy.Where(m => known.TryGetValue(m.Fact, out var value) && value == m.Value).Select(m => (Fault: f.Id, m.Fact, m.Times)))
            .OrderBy(m => m.Fault, StringComparer.Ordinal).ThenBy(m => m.Fact, StringComparer.Ordinal)
            .ToList();
        var removed = met.Where(m => m.Times == 0).Select(m => m.Fault).Distinct(StringComparer.Ordinal).ToImmutableArray();
        return new MachineProfile(
            [.. met.Where(m => !removed.Contains(m.Fault)).Select(m => new ContextShift(m.Fault, Math.Log(m.Times)))],
            removed);
    }

    /// <summary>The rules as a model for this one bike; the model of them all when nothing is known that moves anything.</summary>
    public static DiagnosticModel ModelFor(KnowledgeBase knowledge, IReadOnlyDictionary<string, string> known)
    {
        var profile = Of(knowledge, known);
        return profile.Shifts.IsEmpty && profile.Removed.IsEmpty
            ? knowledge.Model
            : MachineContext.Apply(knowledge.Model, profile.Shifts, profile.Removed);
    }
}
