using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>The covers that the steps of a table are behind, numbered as they turn up: a model may have more of them than a bit set holds.</summary>
internal sealed class CoverList(DiagnosticModel model, CostWeights weights, ImmutableHashSet<string> open)
{
    private readonly List<string> ids = [];

    /// <summary>The opening costs, in order.</summary>
    public double[] Costs => [.. ids.Select(id => weights.Total(model.Covers[model.CoverAt(id)].OpeningCost))];

    /// <summary>The ones that are open already, as a bit set.</summary>
    public ulong Open
    {
        get
        {
            var bits = 0UL;
            for (var i = 0; i < ids.Count; i++) bits |= open.Contains(ids[i]) ? 1UL << i : 0;
            return bits;
        }
    }

    /// <summary>The place of a cover, or -1 for a step that is behind none.</summary>
    public int PlaceOf(string? id)
    {
        if (id is null) return -1;
        if (ids.IndexOf(id) is var at and >= 0) return at;
        ids.Add(id);
        return ids.Count - 1;
    }
}
