using System.Collections.Immutable;

namespace ShedBot.Simulation.Learning;

/// <summary>What is to be found out about learning.</summary>
/// <param name="Seeds">One simulated club a seed.</param>
/// <param name="Stages">After how many cases what was learnt is measured, rising.</param>
/// <param name="Riders">How many fresh riders measure each stage; the same ones at every stage.</param>
/// <param name="Threads">How many riders ride side by side; the numbers do not depend on it.</param>
/// <param name="Keep">A folder for the cases of the clubs, so that another run need not ride them again; null for none.</param>
internal sealed record StudyPlan(ImmutableArray<int> Seeds, ImmutableArray<int> Stages, int Riders, WorldSpread Spread, ClubHabits Habits, int Threads, string? Keep = null)
{
    /// <summary>Added to the seed of a club for the riders that measure: none of them is among those who were learnt from.</summary>
    public const int Fresh = 1_000_000;
}

/// <summary>One club at one stage.</summary>
/// <param name="Cases">How many cases there were to learn from; -1 for rules that know the truth.</param>
/// <param name="Moves">How many numbers had moved.</param>
/// <param name="HeldBack">How many more would have moved by the counts alone.</param>
/// <param name="BlamedTimes">What the odds of the cause that the hostile member blames were multiplied with.</param>
/// <param name="Rides">Of the fresh riders, by number.</param>
internal sealed record StageResult(int Seed, int Cases, int Moves, int HeldBack, double BlamedTimes, ImmutableArray<StudyRide> Rides);

/// <summary>What counts of one ride.</summary>
/// <param name="AfterComplaint">The Brier score over all causes after the complaint; NaN when it never came to it.</param>
/// <param name="LogAfter">The mean of -ln of what the true causes were given then; NaN likewise.</param>
/// <param name="BeforeRepair">The Brier score over all causes before the first repair; NaN likewise.</param>
/// <param name="Lead">The chance given to the leading cause after the complaint; NaN likewise.</param>
/// <param name="LeadIsThere">Whether that cause was there.</param>
internal sealed record StudyRide(double Cost, bool RightCause, bool Mended, int Asked, double AfterComplaint, double LogAfter, double BeforeRepair, double Lead, bool LeadIsThere);
