using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Cases;

/// <summary>A case that is over, with how it ended: what rules are tried on, and what is learnt from.</summary>
/// <param name="Bike">The bike as it is kept now; null when it is gone. Facts that the case itself learnt stand in its entries as well.</param>
public sealed record ClosedCase(Case Case, BikeProfile? Bike, Outcome Outcome);
