using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShedBot.Coaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Benchmarks.Rules;

/// <summary>The club's own rules, once or many times over.</summary>
internal static class ClubRules
{
    private static readonly ConcurrentDictionary<int, KnowledgeBase> Loaded = new();

    /// <summary>The rule files of the nearest folder 'knowledge' at or above the program.</summary>
    public static ImmutableArray<RuleText> Files { get; } = KnowledgeFolder.Read(Find());

    /// <param name="times">1 for the rules as they are; 10 for ten times as many, with ids of their own.</param>
    public static ImmutableArray<RuleText> FilesTimes(int times)
    {
        var ids = Load(1).Ids();
        return [.. Files, .. Enumerable.Range(2, times - 1).SelectMany(copy => CopiedRules.Of(Files, ids, copy))];
    }

    public static KnowledgeBase Load(int times) => Loaded.GetOrAdd(times, static t =>
    {
        var result = KnowledgeLoader.Load(t == 1 ? Files : FilesTimes(t));
        return result.Knowledge ?? throw new InvalidOperationException(string.Join('\n', result.Problems.Take(20)));
    });

    /// <summary>A coach with that many rules. It listens for the phrases of the plain rules only: what is measured here is picked, not told.</summary>
    public static Coach CoachOf(int times) => new(Load(times), Listener.For(Load(1)), new CoachOptions());

    /// <summary>What is renamed in a copy; facts of the bike are the same for all.</summary>
    private static ImmutableHashSet<string> Ids(this KnowledgeBase rules) =>
        [.. rules.Complaints.Keys, .. rules.Findings.Keys, .. rules.Faults.Keys, .. rules.Checks.Keys, .. rules.Covers.Keys, .. rules.Repairs.Keys];

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var rules = Path.Combine(folder.FullName, "knowledge");
            if (File.Exists(Path.Combine(rules, "profile.yaml"))) return rules;
        }

        throw new DirectoryNotFoundException("There is no folder 'knowledge' at or above the program.");
    }
}
