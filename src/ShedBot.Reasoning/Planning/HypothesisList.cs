using ShedBot.Reasoning.Inference;

namespace ShedBot.Reasoning.Planning;

/// <summary>The fault sets a plan reckons with: the leading ones of a belief, and the smaller sets that half-done work can leave.</summary>
internal sealed class HypothesisList
{
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly List<int[]> sets = [];
    private readonly List<double> weights = [];

    public int Count => sets.Count;

    public int[] this[int at] => sets[at];

    /// <summary>A copy, as the weights stand now.</summary>
    public double[] Weights() => [.. weights];

    /// <summary>The place of a set, which is added without weight when it is new.</summary>
    public int PlaceOf(int[] faults)
    {
        var key = string.Join(',', faults);
        if (places.TryGetValue(key, out var at)) return at;
        places.Add(key, sets.Count);
        sets.Add(faults);
        weights.Add(0);
        return sets.Count - 1;
    }

    public void Weigh(int at, double weight) => weights[at] += weight;

    /// <summary>The first sets of a belief, in its order; the weight of the others goes to the single faults they hold, so that the marginals stay nearly as they were.</summary>
    public static HypothesisList Leading(Belief belief, int most)
    {
        var list = new HypothesisList();
        var leading = belief.Believed.Leading(most);
        foreach (var node in leading)
        {
            var set = belief.Believed[node];
            list.Weigh(list.PlaceOf([.. set.Faults]), set.Probability);
        }

        var takes = new int[belief.Model.Faults.Length];
        for (var h = 0; h < list.Count; h++)
        {
            if (list[h] is [var only]) takes[only] = 1;
        }

        var shares = belief.Believed.Shares(leading, takes);
        for (var h = 0; h < list.Count; h++)
        {
            if (list[h] is [var only]) list.weights[h] += shares[only];
        }

        return list;
    }
}
