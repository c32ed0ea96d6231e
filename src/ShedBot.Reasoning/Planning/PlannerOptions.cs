namespace ShedBot.Reasoning.Planning;

/// <summary>How much work the planner may put into one decision. All limits are counts, so the same request always gets the same answer.</summary>
/// <param name="MostSets">The fault sets that are kept, most probable first, 1 to 1000; the weight of the others goes to those kept that share their faults.</param>
/// <param name="MostChecks">The checks that are kept for the deeper look, best one-step value first, 0 to 31.</param>
/// <param name="MostRepairs">The repairs that are kept, greatest part in the weight per cost first, 0 to 31.</param>
/// <param name="ExactSituations">
/// A problem of single faults with at most so many situations (what was answered, what failed) is planned exactly; 0 never plans exactly.
/// A situation takes about half a microsecond and eight bytes.
/// </param>
/// <param name="Deepened">How many of the most promising steps are looked at one step deeper, 0 or more.</param>
public sealed record PlannerOptions(
    int MostSets = 64,
    int MostChecks = 12,
    int MostRepairs = 24,
    int ExactSituations = 300_000,
    int Deepened = 4);
