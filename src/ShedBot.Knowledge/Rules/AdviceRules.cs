using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>The answer to a 'how do I' question that is no trouble.</summary>
public sealed record HowToRule(
    string Id,
    string Called,
    ImmutableArray<string> RidersAsk,
    ImmutableArray<CautionRule> Cautions,
    ImmutableArray<string> Answer,
    Origin Origin);

/// <summary>Something that comes before any coaching.</summary>
/// <param name="Caution">Its signal word, hazard, consequence and avoidance.</param>
/// <param name="DoNow">What to do now, in order.</param>
/// <param name="EndsCoaching">True when a human must take over; false when the case may go on once the rider says that all is safe.</param>
public sealed record EmergencyRule(
    string Id,
    string Called,
    ImmutableArray<string> RidersSay,
    CautionRule Caution,
    ImmutableArray<string> DoNow,
    bool EndsCoaching,
    Origin Origin);

/// <summary>What is asked once in a case, before the first step that puts hands near the machine.</summary>
/// <param name="Ready">The answer that lets the coaching go on.</param>
/// <param name="NotYet">The answer that lets the case rest until it is so.</param>
/// <param name="Dangers">Answer to the id of the emergency that it means.</param>
public sealed record TriageRule(
    string Ask, ImmutableArray<string> Points, string Ready, string NotYet, ImmutableArray<TriageDanger> Dangers, Origin Origin);

public sealed record TriageDanger(string Says, string Emergency);

/// <summary>Words that mean the same to riders: "squeezer" for the lever.</summary>
/// <param name="Concept">The word that the rules use.</param>
/// <param name="RidersSay">Other words, slang and usual misspellings for it.</param>
public sealed record WordRule(string Concept, ImmutableArray<string> RidersSay, Origin Origin);
