using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ShedBot.Reasoning.Inference;

/// <summary>The sets of faults with the chances they ended up with; they are listed only for those who ask, since there can be tens of thousands.</summary>
/// <param name="chances">By node; 0 for a set that kept no weight.</param>
internal sealed class BelievedSets(FaultSets sets, double[] chances)
{
    /// <summary>A chance that is lower than another by more than this part of it does not tie with it.</summary>
    private const double NearlyAll = 1 - 1e-11;

    /// <summary>How many sets kept any weight.</summary>
    public int Count { get; } = chances.Length - chances.AsSpan().Count(0.0);

    /// <summary>P(fault present), by fault.</summary>
    /// <param name="faults">How many faults the model has.</param>
    public double[] Marginals(int faults)
    {
        var (by, from) = (new double[sets.FaultByRank.Length], new double[sets.Inner]);
        // Backwards, so that what a node's children come to is known when the node is met.
        for (var node = sets.Inner - 1; node >= 0; node--)
        {
            var (first, count, rank) = sets.Children(node);
            var run = first < sets.Inner ? from.AsSpan(first, count) : chances.AsSpan(first, count);
            if (first >= sets.Inner) Runs.Add(by.AsSpan(rank, count), run, 1);
            from[node] = chances[node] + Runs.Total(run);
            if (node > 0) by[rank - 1] += from[node];
        }

        return ByFault(by, faults);
    }

    /// <summary>
    /// What falls to each fault when the chance of every set but the leading ones is shared evenly between those of its faults that take a share; by fault.
    /// </summary>
    /// <param name="takes">By fault: 1 where it takes a share, otherwise 0.</param>
    public double[] Shares(ReadOnlySpan<int> leading, ReadOnlySpan<int> takes)
    {
        var left = new HashSet<int>(leading.Length);
        foreach (var node in leading) left.Add(node);
        var (by, from) = (new double[sets.FaultByRank.Length], new double[sets.Inner]);
        var takers = new int[sets.Inner];
        for (var node = 0; node < sets.Inner; node++)
            takers[node] = node == 0 ? 0 : takers[sets.Parent(node)] + takes[sets.FaultByRank[sets.Rank(node)]];
        for (var node = sets.Inner - 1; node >= 0; node--)
        {
            var (first, count, rank) = sets.Children(node);
            var sum = left.Contains(node) || takers[node] == 0 ? 0 : chances[node] / takers[node];
            for (var i = 0; i < count; i++)
            {
                var child = first + i;
                if (child < sets.Inner)
                {
                    sum += from[child];
                    continue;
                }

                var taking = takers[node] + takes[sets.FaultByRank[rank + i]];
                if (chances[child] == 0 || taking == 0 || left.Contains(child)) continue;
                var share = chances[child] / taking;
                by[rank + i] += share;
                sum += share;
            }

            from[node] = sum;
            if (node > 0) by[rank - 1] += sum;
        }

        return ByFault(by, takes.Length);
    }

    /// <summary>The nodes of the most probable sets, most probable first, ties by the fault indices.</summary>
    public ReadOnlySpan<int> Leading(int most)
    {
        var nodes = new int[Math.Min(most, Count)];
        if (nodes.Length == 0) return nodes;
        var kept = 0;
        for (var node = 0; node < sets.Inner; node++)
        {
            var (first, count, _) = sets.Children(node);
            if (kept == nodes.Length && !Runs.AnyFrom(chances.AsSpan(first, count), chances[nodes[^1]] * NearlyAll)) continue;
            for (var child = first; child < first + count; child++)
            {
                if (chances[child] == 0 || (kept == nodes.Length && Compare(child, nodes[^1]) > 0)) continue;
                if (kept < nodes.Length) kept++;
                var at = kept - 1;
                for (; at > 0 && Compare(child, nodes[at - 1]) < 0; at--) nodes[at] = nodes[at - 1];
                nodes[at] = child;
            }
        }

        return nodes;
    }

    public WeightedSet this[int node] => new(ImmutableCollectionsMarshal.AsImmutableArray(sets.Members(node)), chances[node]);

    /// <summary>All that kept any weight, most probable first, ties by the fault indices.</summary>
    public ImmutableArray<WeightedSet> All()
    {
        var (nodes, at) = (new int[Count], 0);
        for (var node = 1; node < chances.Length; node++)
        {
            if (chances[node] > 0) nodes[at++] = node;
        }

        Array.Sort(nodes, Compare);
        return [.. nodes.Select(node => this[node])];
    }

    private int Compare(int x, int y)
    {
        var order = Ties.Key(chances[y]).CompareTo(Ties.Key(chances[x]));
        return order != 0 ? order : sets.Members(x).AsSpan().SequenceCompareTo(sets.Members(y));
    }

    private double[] ByFault(double[] byRank, int faults)
    {
        var byFault = new double[faults];
        for (var rank = 0; rank < byRank.Length; rank++) byFault[sets.FaultByRank[rank]] = byRank[rank];
        return byFault;
    }
}
