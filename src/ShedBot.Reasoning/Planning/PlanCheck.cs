using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>A check as the planner sees it.</summary>
/// <param name="Index">Its place among the table's checks, 0 to 63.</param>
/// <param name="Cover">The place of its cover in the table, or -1.</param>
/// <param name="Chances">P(said state | hypothesis): one row a state, one entry a hypothesis; 'not sure' is left out.</param>
/// <param name="SameFinding">The checks of the same finding, itself included.</param>
internal sealed record PlanCheck(
    int Index, string Id, double Cost, int Cover, Hazard Hazard, double Unsure, double[][] Chances, ulong SameFinding)
{
    public ulong Bit { get; } = 1UL << Index;

    public ulong CoverBit { get; } = Cover < 0 ? 0 : 1UL << Cover;
}
