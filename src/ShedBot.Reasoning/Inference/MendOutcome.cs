namespace ShedBot.Reasoning.Inference;

/// <summary>Moves the weight of each set to what a repair that left trouble behind may have left of it.</summary>
/// <param name="success">By rank: P(mended | fault present), 0 for a fault that the repair does not touch.</param>
/// <param name="nothing">What the chance that nothing was mended is multiplied by, in [0, 1].</param>
internal sealed class MendOutcome(FaultSets sets, double[] success, double nothing)
{
    public double[] After(double[] weights)
    {
        var after = new double[weights.Length];
        Span<int> path = stackalloc int[sets.Largest];
        for (var node = 0; node < sets.Inner; node++)
        {
            var (first, count, rank) = sets.Children(node);
            var touched = Touches(path[..sets.Path(node, path)]);
            var from = first;
            for (var child = first; child < first + count; child++)
            {
                if (!touched && success[rank + child - first] == 0) continue;
                Keep(weights, after, from, child);
                Spread(child, weights[child], after);
                from = child + 1;
            }

            Keep(weights, after, from, first + count);
        }

        after[0] = 0;
        return after;
    }

    /// <summary>For a run of sets that the repair does not touch.</summary>
    private void Keep(double[] weights, double[] after, int from, int to) =>
        Runs.Add(after.AsSpan(from, to - from), weights.AsSpan(from, to - from), nothing);

    private bool Touches(ReadOnlySpan<int> path)
    {
        foreach (var rank in path)
        {
            if (success[rank] > 0) return true;
        }

        return false;
    }

    private void Spread(int node, double weight, double[] after)
    {
        if (weight == 0) return;
        Span<int> path = stackalloc int[sets.Largest];
        Span<int> touched = stackalloc int[sets.Largest];
        Span<int> left = stackalloc int[sets.Largest];
        path = path[..sets.Path(node, path)];
        var count = 0;
        foreach (var rank in path)
        {
            if (success[rank] > 0) touched[count++] = rank;
        }

        for (var pick = 0; pick < 1 << count; pick++)
        {
            var chance = weight * (pick == 0 ? nothing : 1);
            for (var i = 0; i < count; i++) chance *= (pick >> i & 1) == 1 ? success[touched[i]] : 1 - success[touched[i]];
            var (length, at) = (0, 0);
            foreach (var rank in path)
            {
                if (at < count && touched[at] == rank && (pick >> at++ & 1) == 1) continue;
                left[length++] = rank;
            }

            after[sets.Find(left[..length])] += chance;
        }
    }
}
