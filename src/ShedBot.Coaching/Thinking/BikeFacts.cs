using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Thinking;

/// <summary>What a bike's profile still tells: facts age, and an old one is asked again.</summary>
internal static class BikeFacts
{
    public static ImmutableDictionary<string, string> Fresh(BikeProfile bike, KnowledgeBase knowledge, DateTimeOffset now) => bike.Facts
        .Where(f => knowledge.Facts.TryGetValue(f.Key, out var rule)
            && rule.Values.Any(v => v.Id == f.Value.Value)
            && (now - f.Value.Learnt).TotalDays <= rule.KeepsForDays)
        .ToImmutableDictionary(f => f.Key, f => f.Value.Value, StringComparer.Ordinal);
}
