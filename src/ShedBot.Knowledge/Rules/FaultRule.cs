using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A cause.</summary>
/// <param name="Is">Completes 'most likely ...': "the clutch arm was set up part-way in, not at rest".</param>
/// <param name="Because">Why it gives the trouble, in two or three sentences for the rider.</param>
/// <param name="HowCommon">One of <see cref="Wording.FrequencyWords"/>.</param>
/// <param name="ShowsAs">Finding (or complaint) id to state id to chance word: "if only this is wrong, how often do you see it?" (gross, leak inside).</param>
/// <param name="MovedBy">How facts of the bike's profile move the chance of it.</param>
public sealed record FaultRule(
    string Id,
    string Is,
    string Because,
    string HowCommon,
    ImmutableDictionary<string, ImmutableDictionary<string, string>> ShowsAs,
    ImmutableArray<ProfileCondition> MovedBy,
    Origin Origin);

/// <summary>When a fact of the profile has this value, the odds of the fault are multiplied.</summary>
/// <param name="Times">Odds ratio, above 0; 0 means that the fault is impossible and is taken out.</param>
public sealed record ProfileCondition(string Fact, string Value, double Times);
