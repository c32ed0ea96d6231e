using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Nudging;

/// <summary>What an answer came to.</summary>
/// <param name="Rider">The member after; its version is one above the one it was read with.</param>
/// <param name="Bikes">The bikes that changed, each with its version one above the one it was read with. To be saved with the member.</param>
/// <param name="Say">What is answered.</param>
/// <param name="Opens">Set when a case is to be opened.</param>
public sealed record Taken(Rider Rider, ImmutableArray<BikeProfile> Bikes, Card Say, TroubleShown? Opens = null);

/// <summary>Trouble that a service task has shown.</summary>
/// <param name="Complaint">The id of a complaint rule.</param>
public sealed record TroubleShown(BikeId Bike, string Complaint);
