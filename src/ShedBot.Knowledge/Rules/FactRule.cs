using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A fact of the bike's profile that moves the chances of faults: what is fitted, since when, what was done lately.</summary>
/// <param name="Ask">The question that fills it.</param>
/// <param name="Values">The answers, the usual one first.</param>
/// <param name="KeepsForDays">After so many days it is asked again; whole days, 1 or more.</param>
public sealed record FactRule(
    string Id, string Called, string Ask, ImmutableArray<FactValue> Values, int KeepsForDays, Origin Origin);

/// <summary>A value that a fact can have.</summary>
/// <param name="HowOften">Chance word: the share of bikes that come with this value.</param>
/// <param name="RidersSay">Example phrases with which riders volunteer it.</param>
public sealed record FactValue(string Id, string Says, string HowOften, ImmutableArray<string> RidersSay);
