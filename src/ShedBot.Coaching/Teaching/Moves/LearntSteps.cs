using System.Collections.Immutable;
using ShedBot.Coaching.Learning;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>One number that differs between what a club has learnt and what it would have learnt.</summary>
/// <param name="Key">As <see cref="LearningTarget.Key"/>.</param>
/// <param name="Before">What it is; null: as the rules' own word has it.</param>
/// <param name="After">What it would be; null likewise.</param>
/// <param name="IsClear">Whether the difference is worth an act by itself.</param>
internal sealed record LearntStep(string Key, double? Before, double? After, bool IsClear);

/// <summary>Learnt numbers by their keys, and how two sets of them differ.</summary>
internal static class LearntSteps
{
    public static ImmutableSortedDictionary<string, double> ByKey(Learnt learnt) => new[]
    {
        learnt.Odds.Select(o => KeyValuePair.Create(new OddsTarget(o.Fault).Key, o.Times)),
        learnt.Links.Select(l => KeyValuePair.Create(new LinkTarget(l.Fault, l.Finding, l.State).Key, l.Chance)),
        learnt.Mends.Select(m => KeyValuePair.Create(new MendTarget(m.Repair, m.Fault).Key, m.Chance)),
    }.SelectMany(n => n).ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static Learnt Of(IEnumerable<KeyValuePair<string, double>> numbers)
    {
        var all = numbers.Select(n => (Target: TargetWords.Read(n.Key), n.Value)).ToList();
        return Learnt.Of(
            all.Select(n => n.Target is OddsTarget t ? new LearntOdds(t.Fault, n.Value) : null).OfType<LearntOdds>(),
            all.Select(n => n.Target is LinkTarget t ? new LearntLink(t.Fault, t.Finding, t.State, n.Value) : null).OfType<LearntLink>(),
            all.Select(n => n.Target is MendTarget t ? new LearntMend(t.Repair, t.Fault, n.Value) : null).OfType<LearntMend>());
    }

    /// <summary>What differs between what is used and what would be, in the order of the keys.</summary>
    /// <param name="unlearnt">The club's rules without anything learnt: a number that they have no more moves nothing.</param>
    public static ImmutableArray<LearntStep> Between(Learnt now, Learnt then, KnowledgeBase unlearnt, LearningLimits limits) =>
        Between(now, then, (key, before, after) => IsClear(key, before, after, TargetWords.Plain(unlearnt, key), limits.LeastChange, limits.LeastStep));

    /// <summary>The same of two counts. What one of them does not tell may lie anywhere below what is worth telling, so more is asked for.</summary>
    public static ImmutableArray<LearntStep> BetweenCounts(Learnt first, Learnt second, KnowledgeBase unlearnt, LearningLimits limits) => Between(first, second, (key, before, after) =>
        before is null || after is null
            ? IsClear(key, before, after, TargetWords.Plain(unlearnt, key), limits.LeastChange * limits.LeastChange, 2 * limits.LeastStep)
            : IsClear(key, before, after, TargetWords.Plain(unlearnt, key), limits.LeastChange, limits.LeastStep));

    private static ImmutableArray<LearntStep> Between(Learnt first, Learnt second, Func<string, double?, double?, bool> isClear)
    {
        var (before, after) = (ByKey(first), ByKey(second));
        return
        [
            .. before.Keys.Union(after.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(key => (Key: key, Before: Find(before, key), After: Find(after, key)))
                .Where(s => s.Before != s.After)
                .Select(s => new LearntStep(s.Key, s.Before, s.After, isClear(s.Key, s.Before, s.After))),
        ];
    }

    /// <summary>What would be learnt, with these numbers left as they are.</summary>
    public static Learnt Without(Learnt now, Learnt then, IReadOnlySet<string> left) =>
        left.Count == 0 ? then : Of(ByKey(then).Where(n => !left.Contains(n.Key)).Concat(ByKey(now).Where(n => left.Contains(n.Key))));

    private static bool IsClear(string key, double? before, double? after, double? plain, double leastChange, double leastStep)
    {
        if (plain is not { } word) return false;
        var (from, to) = (before ?? word, after ?? word);
        return TargetWords.Read(key) is OddsTarget ? Math.Max(from / to, to / from) >= leastChange : Math.Abs(from - to) >= leastStep;
    }

    private static double? Find(ImmutableSortedDictionary<string, double> numbers, string key) => numbers.TryGetValue(key, out var number) ? number : null;
}
