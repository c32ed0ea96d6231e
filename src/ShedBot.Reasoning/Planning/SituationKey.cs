namespace ShedBot.Reasoning.Planning;

/// <summary>One number for what has been answered and what has failed: a digit for each check, a bit for each repair.</summary>
internal sealed class SituationKey
{
    private readonly long[] checks;
    private readonly long[] repairs;

    public SituationKey(PlanTable table)
    {
        var size = 1.0;
        checks = [.. table.Checks.Select(c => Place(c.Chances.Length + (c.Unsure > 0 ? 2 : 1)))];
        repairs = [.. table.Repairs.Select(_ => Place(2))];
        Situations = size;

        long Place(int digits)
        {
            var place = size;
            size *= digits;
            return (long)place;
        }
    }

    /// <summary>How many situations there are; every key is below it. Beyond 2^53 keys are no longer distinct.</summary>
    public double Situations { get; }

    public long Answered(long at, PlanCheck check, int state) => at + ((state + 1) * checks[check.Index]);

    public long Unsure(long at, PlanCheck check) => at + ((check.Chances.Length + 1) * checks[check.Index]);

    public long Failed(long at, PlanRepair repair) => at + repairs[repair.Index];
}
