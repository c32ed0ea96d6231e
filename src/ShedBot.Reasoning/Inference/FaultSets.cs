namespace ShedBot.Reasoning.Inference;

/// <summary>
/// Every set of faults that is looked at, as a tree: a node's set is its parent's with one fault more, so whatever is a product or a sum over
/// a set's faults costs one step a set.
/// </summary>
/// <remarks>
/// Faults stand in an order of rank, and a node's children carry a higher rank than itself. All single faults are in; sets of two and more, up
/// to the bound, are built from the first <see cref="Joining"/> ranks. One number for all sizes: with more faults in pairs than in triples, a
/// chance companion would count beside one true fault but not beside two, and lean the sums towards too few faults. Node 0 is the empty set.
/// Children of a node lie side by side, by rank without a gap; so only the nodes that may have children, the first <see cref="Inner"/> ones,
/// are written down, and the far more numerous sets of the largest size are gone through as runs.
/// </remarks>
internal sealed class FaultSets
{
    private readonly int[] firstChild, faults, parent, rank;

    /// <param name="faults">Fault indices by rank.</param>
    /// <param name="joining">How many of the first ranks may stand together in one set.</param>
    /// <param name="largest">The most faults in one set, 1 or more.</param>
    public FaultSets(int[] faults, int joining, int largest)
    {
        this.faults = faults;
        Joining = joining;
        Largest = largest;
        Count = 1 + (int)SetsUpTo(faults.Length, joining, largest);
        Inner = largest == 1 ? 1 : 1 + (int)SetsUpTo(faults.Length, joining, largest - 1);
        parent = new int[Inner];
        rank = new int[Inner];
        firstChild = new int[Inner + 1];
        rank[0] = -1;
        var next = 1;
        for (var node = 0; node < Inner; node++)
        {
            firstChild[node] = next;
            for (var child = rank[node] + 1; child < (node == 0 ? faults.Length : joining); child++, next++)
            {
                if (next >= Inner) continue;
                parent[next] = node;
                rank[next] = child;
            }
        }

        firstChild[Inner] = Count;
    }

    public int Joining { get; }

    public int Largest { get; }

    /// <summary>How many nodes, the empty set among them.</summary>
    public int Count { get; }

    /// <summary>How many nodes come before the first one that can have no children because its set is of the largest size.</summary>
    public int Inner { get; }

    public ReadOnlySpan<int> FaultByRank => faults;

    /// <summary>The children of one of the first <see cref="Inner"/> nodes: the nodes from 'First' on, with ranks from 'Rank' on.</summary>
    public (int First, int Count, int Rank) Children(int node) =>
        (firstChild[node], firstChild[node + 1] - firstChild[node], rank[node] + 1);

    public int Parent(int node) => node < Inner ? parent[node] : ParentOfLast(node);

    /// <summary>The rank of the fault that a node adds to its parent's set; -1 for the empty set.</summary>
    public int Rank(int node) => node < Inner ? rank[node] : RankOfLast(node, ParentOfLast(node));

    /// <summary>The ranks of a node's set, falling, at the start of <paramref name="path"/>.</summary>
    /// <param name="path">Room for <see cref="Largest"/> of them.</param>
    /// <returns>How many.</returns>
    public int Path(int node, Span<int> path)
    {
        var length = 0;
        if (node >= Inner)
        {
            var above = ParentOfLast(node);
            path[length++] = RankOfLast(node, above);
            node = above;
        }

        for (; node != 0; node = parent[node]) path[length++] = rank[node];
        return length;
    }

    /// <summary>The node of a set.</summary>
    /// <param name="path">Its ranks, falling.</param>
    public int Find(ReadOnlySpan<int> path)
    {
        var at = 0;
        for (var i = path.Length - 1; i >= 0; i--) at = firstChild[at] + path[i] - rank[at] - 1;
        return at;
    }

    /// <summary>The faults of a node's set, ascending.</summary>
    public int[] Members(int node)
    {
        Span<int> members = stackalloc int[Largest];
        members = members[..Path(node, members)];
        foreach (ref var member in members) member = faults[member];
        members.Sort();
        return members.ToArray();
    }

    /// <summary>How many sets there are, the empty one not counted; a double, because it can be huge.</summary>
    public static double SetsUpTo(int faults, int joining, int largest)
    {
        double sum = faults, binomial = joining;
        for (var size = 2; size <= Math.Min(largest, joining); size++)
        {
            binomial = binomial * (joining - size + 1) / size;
            sum += binomial;
        }

        return sum;
    }

    /// <summary>The most faults that may stand together so that there are no more than so many sets; all of them where that fits.</summary>
    public static int MostJoining(int faults, int largest, int maxSets)
    {
        var joining = faults;
        while (joining > 1 && SetsUpTo(faults, joining, largest) > maxSets) joining--;
        return joining;
    }

    private int ParentOfLast(int node)
    {
        // The last one whose children begin at or before the node; one without children begins where the next one does.
        int from = 0, to = Inner;
        while (to - from > 1)
        {
            var middle = (from + to) / 2;
            if (firstChild[middle] <= node) from = middle;
            else to = middle;
        }

        return from;
    }

    private int RankOfLast(int node, int above) => rank[above] + 1 + node - firstChild[above];
}
