using ShedBot.Coaching.Learning.Counting;

namespace ShedBot.Coaching.Learning.Proving;

/// <summary>A club's cases in a few parts, all cases of a member in the same one: what is learnt from all but one part is put to the test on that one.</summary>
internal sealed class CaseFolds
{
    /// <summary>Stands for no part: what is learnt from all cases.</summary>
    public const int None = -1;

    private const int Most = 5;

    private readonly int[] foldOf;
    private readonly List<int>[] training;

    public CaseFolds(IReadOnlyList<WeighedCase> cases)
    {
        Cases = cases;
        var members = cases.GroupBy(c => c.Member).Select(m => (Member: m.Key, Weight: m.Sum(c => c.Weight))).ToList();
        Members = members.Count;
        Count = Math.Min(Most, Members);
        var (weights, ofMember) = (new double[Count], new Dictionary<int, int>());
        foreach (var (member, weight) in members.OrderByDescending(m => m.Weight).ThenBy(m => m.Member))
        {
            var lightest = Array.IndexOf(weights, weights.Min());
            ofMember[member] = lightest;
            weights[lightest] += weight;
        }

        foldOf = [.. cases.Select(c => ofMember[c.Member])];
        training = [.. Enumerable.Range(None, Count + 1).Select(fold => Enumerable.Range(0, cases.Count).Where(i => foldOf[i] != fold).ToList())];
    }

    public IReadOnlyList<WeighedCase> Cases { get; }

    public int Members { get; }

    public int Count { get; }

    public int FoldOf(int at) => foldOf[at];

    /// <summary>Indices of the cases that are not in the fold.</summary>
    public IReadOnlyList<int> Training(int fold) => training[fold - None];
}
