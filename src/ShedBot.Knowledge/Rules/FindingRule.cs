using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>Something that can be seen, felt or told.</summary>
/// <param name="Means">What it is about: "how the arm moves when the lever is pulled".</param>
/// <param name="States">The first is the normal one.</param>
/// <param name="SeenAnyway">State id to a chance word: how often it is seen with nothing in the rules to cause it (the leak). Missing: 1 %.</param>
public sealed record FindingRule(
    string Id, string Means, ImmutableArray<StateRule> States, ImmutableDictionary<string, string> SeenAnyway, Origin Origin);

/// <summary>One state of a finding.</summary>
/// <param name="Says">The answer as a rider would give it; used as the option.</param>
/// <param name="RidersSay">Example phrases with which riders volunteer it.</param>
/// <param name="StopRiding">Why the bike must not be ridden when this is found, and what to do now; null when it may.</param>
public sealed record StateRule(string Id, string Says, ImmutableArray<string> RidersSay, string? StopRiding);
