using System.Collections.Immutable;

namespace ShedBot.Knowledge.Understanding;

/// <summary>What was heard in a rider's own words.</summary>
/// <param name="Complaints">Best first; scores in (0, 1]. Only what is affirmed: 'it does not slip, it drags' gives drags.</param>
/// <param name="Denied">Complaints that the rider says it is not.</param>
/// <param name="Findings">Volunteered findings and their states.</param>
/// <param name="Facts">Volunteered facts of the bike.</param>
/// <param name="Emergency">The id of an emergency rule, or null.</param>
/// <param name="HowTo">The 'how do I' answer that is asked for, or null.</param>
/// <param name="NotMine">True for chatter, other machines, other parts of the machine, and messages with nothing to go on.</param>
/// <param name="NotMineBecause">empty, chatter, other-machine, other-part, unclear, too-long; null when it is ours.</param>
public sealed record Understood(
    ImmutableArray<Heard> Complaints,
    ImmutableArray<string> Denied,
    ImmutableArray<HeardState> Findings,
    ImmutableArray<HeardState> Facts,
    string? Emergency,
    Heard? HowTo,
    bool NotMine,
    string? NotMineBecause)
{
    /// <summary>The id of the question that tells apart what the words could mean; null when they are plain. They may be heard as one of the troubles all the same.</summary>
    public string? Either { get; init; }

    /// <summary>Emergencies that the words speak against, as "the brakes are fine" does.</summary>
    public ImmutableHashSet<string> SpokenAgainst { get; init; } = [];

    /// <summary>What the words mean as an answer to the question that is open; null when none is open or they fit none of its answers.</summary>
    public HeardAnswer? Answer { get; init; }
}

/// <param name="Score">How sure, in (0, 1].</param>
public sealed record Heard(string Id, double Score);

/// <param name="Subject">The id of a finding or fact.</param>
/// <param name="State">The id of the state or value.</param>
/// <param name="Score">How sure, in (0, 1].</param>
public sealed record HeardState(string Subject, string State, double Score);

/// <summary>What words that were not understood may mean.</summary>
/// <param name="Subject">The id of a complaint or of a finding.</param>
/// <param name="State">The id of the finding's state; null for a complaint.</param>
/// <param name="Score">How much speaks for it, in (0, 1]; low as a rule.</param>
public sealed record HeardGuess(string Subject, string? State, double Score);
