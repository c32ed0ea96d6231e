using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>Words that could mean either of several troubles, one of them dangerous, and the question that tells them apart before anything else is asked.</summary>
/// <param name="Called">What is not known, as in "which lever it is".</param>
/// <param name="RidersSay">Runs of words that always want the question.</param>
/// <param name="RidersName">Words for the thing; one of them beside one of <paramref name="AndTell"/> wants the question too.</param>
/// <param name="AndTell">What is said of the thing.</param>
/// <param name="UnlessTheySay">Words beside which nothing of all this is meant.</param>
/// <param name="OtherWords">The question put differently, for a second try.</param>
/// <param name="UntilKnown">What holds until it is known, in order.</param>
/// <param name="IfUnsure">What is said when it stays unknown and the bike must not be ridden.</param>
/// <param name="Answers">Two or more.</param>
public sealed record EitherRule(
    string Id,
    string Called,
    ImmutableArray<string> RidersSay,
    ImmutableArray<string> RidersName,
    ImmutableArray<string> AndTell,
    ImmutableArray<string> UnlessTheySay,
    string Ask,
    string Why,
    string OtherWords,
    string? ShowMe,
    CautionRule Caution,
    ImmutableArray<string> UntilKnown,
    string IfUnsure,
    ImmutableArray<EitherAnswer> Answers,
    Origin Origin);

/// <param name="Says">What the rider sees.</param>
/// <param name="RidersSay">Other words for it.</param>
/// <param name="NamedBy">Words that settle it by themselves: whoever says "clutch lever" is not asked which one.</param>
/// <param name="Means">The id of a complaint or of an emergency.</param>
public sealed record EitherAnswer(string Says, ImmutableArray<string> RidersSay, ImmutableArray<string> NamedBy, string Means);
