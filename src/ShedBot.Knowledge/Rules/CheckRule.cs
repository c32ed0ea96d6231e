using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A way to learn a finding: a question from memory, or something to do at the bike.</summary>
/// <param name="Tells">The id of the finding it observes.</param>
/// <param name="Ask">The question, one sentence.</param>
/// <param name="Why">Why it is asked, one or two sentences: what the answers would point to.</param>
/// <param name="How">What to do, in order; empty for a question from memory.</param>
/// <param name="Answers">State id to what the rider sees, where the finding's own words do not serve.</param>
/// <param name="ShowMe">Fuller help for someone who does not know the parts; may hold a text drawing.</param>
/// <param name="OtherWords">The same question put differently, for a second try; null when there is none.</param>
/// <param name="Minutes">0 or more.</param>
/// <param name="Effort">0 or more; see the cost type of the reasoning.</param>
/// <param name="Cover">The id of the cover it hides behind, or null.</param>
/// <param name="Hazard">none, low, medium or high.</param>
/// <param name="HandsOn">True when hands go near the machine: safety triage comes first.</param>
/// <param name="Reliability">One of <see cref="Wording.ReliabilityWords"/>.</param>
public sealed record CheckRule(
    string Id,
    string Tells,
    string Ask,
    string Why,
    ImmutableArray<string> How,
    ImmutableDictionary<string, string> Answers,
    string? ShowMe,
    string? OtherWords,
    double Minutes,
    double Effort,
    ImmutableArray<string> Tools,
    string? Cover,
    string Hazard,
    bool HandsOn,
    string Reliability,
    ImmutableArray<CautionRule> Cautions,
    Origin Origin);

/// <summary>A shared piece of dismantling.</summary>
public sealed record CoverRule(
    string Id, string Called, double Minutes, double Effort, ImmutableArray<string> Tools, ImmutableArray<string> How, Origin Origin);

/// <summary>A caution in the order of ANSI Z535.6: signal word, hazard, consequence, avoidance.</summary>
/// <param name="Word">DANGER, WARNING, CAUTION or NOTICE.</param>
public sealed record CautionRule(string Word, string Hazard, string Consequence, string Avoid);
