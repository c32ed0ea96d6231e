using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>
/// A fault that is put on every bike that is drawn, so that rare ones need not be waited for. Faults come independently once the facts of the bike are
/// known, so all that has to be made up for is that bikes with the fault are of other kinds: kinds of bike are kept in proportion to its chance on them.
/// </summary>
/// <param name="Faults">The faults to choose from.</param>
/// <param name="Weights">Of each, 0 or more.</param>
internal sealed record ForcedFault(ImmutableArray<string> Faults, ImmutableArray<double> Weights, ImmutableDictionary<string, double> Most)
{
    /// <exception cref="KeyNotFoundException">The rules have no such fault.</exception>
    public static ForcedFault One(KnowledgeBase knowledge, string fault) =>
        Of(knowledge, [(knowledge.Model.Faults[knowledge.Model.FaultAt(fault)].Id, 1)]);

    /// <summary>One of the faults that show as this state, by their chances and how often they do; null when no listed fault does.</summary>
    public static ForcedFault? Behind(KnowledgeBase knowledge, string finding, int state)
    {
        var model = knowledge.Model;
        ImmutableArray<(string, double)> causes =
        [
            .. model.Findings[model.FindingAt(finding)].Links
                .Where(l => l.Fault != KnowledgeBase.SomethingElse && l.Net[state] > 0)
                .Select(l => (l.Fault, model.Faults[model.FaultAt(l.Fault)].Prior * l.Net[state])),
        ];
        return causes.IsEmpty ? null : Of(knowledge, causes);
    }

    public string Pick(Luck luck) => Faults[luck.Pick(Weights, "the fault that is wanted")];

    /// <summary>Whether a bike of this kind is kept, with a chance in proportion to that of the fault on it.</summary>
    /// <param name="model">Of this bike.</param>
    public bool Fits(string fault, DiagnosticModel model, Luck luck) =>
        model.Faults.FirstOrDefault(f => f.Id == fault) is { } here && luck.Happens(here.Prior / Most[fault], "kept for the fault that is wanted");

    private static ForcedFault Of(KnowledgeBase knowledge, ImmutableArray<(string Fault, double Weight)> causes) => new(
        [.. causes.Select(c => c.Fault)],
        [.. causes.Select(c => c.Weight)],
        causes.ToImmutableDictionary(c => c.Fault, c => MostLikely(knowledge, c.Fault), StringComparer.Ordinal));

    /// <summary>No less than the chance of the fault on the kind of bike that is likeliest to have it.</summary>
    private static double MostLikely(KnowledgeBase knowledge, string fault)
    {
        var prior = knowledge.Model.Faults[knowledge.Model.FaultAt(fault)].Prior;
        if (!knowledge.Faults.TryGetValue(fault, out var rule)) return prior;
        var logit = Math.Log(prior / (1 - prior));
        foreach (var moves in rule.MovedBy.GroupBy(m => m.Fact, StringComparer.Ordinal)) logit += Math.Max(0, moves.Max(m => m.Times > 0 ? Math.Log(m.Times) : 0));
        return 1 / (1 + Math.Exp(-logit));
    }
}
