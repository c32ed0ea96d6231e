using System.Collections.Immutable;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>A word or concept that counts, and whether it is denied: 'does not slip' holds (slip, denied).</summary>
internal readonly record struct Feature(string Concept, bool Denied);

/// <summary>Whether a statement is about the bike as it is.</summary>
internal enum Mood
{
    Present,
    Past,
    Supposed,
}

/// <summary>The smallest stretch of a message that says one thing.</summary>
/// <param name="AfterHardBreak">True when a full stop, 'but', 'also' or the like stands before it.</param>
internal sealed record Statement(ImmutableArray<Feature> Features, Mood Mood, bool AfterHardBreak);
