namespace ShedBot.Reasoning.Planning;

/// <summary>What can still be done, as bit sets over the steps of a <see cref="PlanTable"/>; hence at most 64 of each kind.</summary>
internal readonly record struct StepsLeft(ulong Checks, ulong Repairs, ulong CoversOpen)
{
    /// <summary>One answer a finding: within a plan, other ways of seeing the same finding are closed with it, since they share its true state.</summary>
    public StepsLeft Answered(PlanCheck check) => new(Checks & ~check.SameFinding, Repairs, CoversOpen | check.CoverBit);

    public StepsLeft Unsure(PlanCheck check) => new(Checks & ~check.Bit, Repairs, CoversOpen | check.CoverBit);

    public StepsLeft Failed(PlanRepair repair) => new(Checks, Repairs & ~repair.Bit, CoversOpen | repair.CoverBit);
}
