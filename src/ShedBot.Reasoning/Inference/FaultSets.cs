namespace ShedBot.Reasoning.Inference;

/// <summary>
/// Every set of faults that is looked at, as a tree: a node's set is its parent's with one fault more, so whatever is a product or a sum over
/// a set's faults costs one step a set.
/// </summary>
/// <remarks>
/// Faults stand in an order of rank, and a node's children carry a higher rank than itself. All single faults are in; sets of two and more, up
/// to the bound, are built from the first <see cref="Joining"/> ranks. One number for all sizes: with more faults in pairs than in triples, a
/// chance companion would count beside one true fault but not beside two, and lean the sums towards too few faults. Node 0 is the empty set.
/// Children of a node lie side by side.
/// </remarks>
internal sealed class FaultSets
{
    private readonly int[] firstChild;
    private readonly int[] faults;
    private readonly Dictionary<int, int> rankOf;

    /// <param name="faults">Fault indices by rank.</param>
    /// <param name="joining">How many of the first ranks may stand together in one set.</param>
    /// <param name="largest">The most faults in one set.</param>
    public FaultSets(int[] faults, int joining, int largest)
    {
        this.faults = faults;
        Joining = joining;
        Largest = largest;
        var count = 1 + (int)SetsUpTo(faults.Length, joining, largest);
        Parent = new int[count];
        Rank = new int[count];
        firstChild = new int[count];
        rankOf = [];
        for (var rank = 0; rank < faults.Length; rank++) rankOf.Add(faults[rank], rank);
        Rank[0] = -1;
        int next = 1, level = 0, levelEnd = 1;
        for (var node = 0; node < count; node++)
        {
            if (node == levelEnd)
            {
                level++;
                levelEnd = next;
            }

            firstChild[node] = next;
            if (level >= largest) continue;
            for (var rank = Rank[node] + 1; rank < (level == 0 ? faults.Length : joining); rank++)
            {
                Parent[next] = node;
                Rank[next++] = rank;
            }
        }
    }

    public int Joining { get; }

    public int Largest { get; }

    /// <summary>How many nodes, the empty set among them.</summary>
    public int Count => Parent.Length;

    public int[] Parent { get; }

    /// <summary>The rank of the fault that a node adds to its parent's set.</summary>
    public int[] Rank { get; }

    public ReadOnlySpan<int> FaultByRank => faults;

    /// <summary>The fault that a node adds to its parent's set.</summary>
    public int Added(int node) => faults[Rank[node]];

    public int RankOf(int fault) => rankOf.TryGetValue(fault, out var rank) ? rank : -1;

    /// <summary>The node of the set that a node would be without some of its faults.</summary>
    /// <param name="without">Ranks, ascending.</param>
    public int Without(int node, ReadOnlySpan<int> without)
    {
        Span<int> path = stackalloc int[Largest];
        var length = 0;
        for (; node != 0; node = Parent[node])
        {
            if (!without.Contains(Rank[node])) path[length++] = Rank[node];
        }

        var at = 0;
        while (length-- > 0) at = firstChild[at] + path[length] - Rank[at] - 1;
        return at;
    }

    /// <summary>The faults of a node's set, ascending.</summary>
    public int[] Members(int node)
    {
        Span<int> members = stackalloc int[Largest];
        var length = 0;
        for (; node != 0; node = Parent[node]) members[length++] = Added(node);
        members = members[..length];
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
}
