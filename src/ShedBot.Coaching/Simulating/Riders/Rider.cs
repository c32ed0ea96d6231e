using System.Collections.Immutable;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>An invented rider with a bike in trouble.</summary>
/// <param name="Facts">What is true of the bike, fact to value.</param>
/// <param name="Complaints">What the bike does, as ids; never empty.</param>
public sealed record Rider(int Number, Luck Luck, ImmutableSortedDictionary<string, string> Facts, Machine Machine, ImmutableArray<string> Complaints);

/// <summary>Which riders to draw.</summary>
/// <param name="Complaint">Only riders whose bike shows it; null for any.</param>
/// <param name="Fault">Only bikes with exactly this fault; null for whatever the rules make likely.</param>
/// <param name="With">Only bikes with this fault, others beside it as the rules make them likely; null for any.</param>
/// <param name="Shows">Only bikes on which a fault shows this, as "finding/state"; null for any.</param>
public sealed record RidersWanted(string? Complaint = null, string? Fault = null, string? With = null, string? Shows = null);
