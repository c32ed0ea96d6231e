namespace ShedBot.Coaching.Trials.Worlds;

/// <summary>Which simulated riders to try new rules on.</summary>
/// <param name="Riders">
/// In each of the two worlds, half of them among those whom the change touches; 4 to 20,000. The usual number takes about a minute on two cores with
/// the shipped rules.
/// </param>
/// <param name="Seed">The same seed, rules and number give the same report.</param>
/// <param name="Stops">Riders drawn for each finding that means 'stop riding'; 0 to 200.</param>
public sealed record RidersTried(int Riders = 200, int Seed = 1, int Stops = 12);
