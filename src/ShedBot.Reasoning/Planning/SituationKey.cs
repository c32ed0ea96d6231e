namespace ShedBot.Reasoning.Planning;

/// <summary>One number for what has been answered and what has failed: a digit for each check, a bit for each repair.</summary>
internal sealed class SituationKey
{
    private readonly UInt128[] checks;
    private readonly UInt128[] repairs;

    public SituationKey(PlanTable table)
    {
        var size = UInt128.One;
        Fits = true;
        checks = [.. table.Checks.Select(c => Place(c.Chances.Length + 2))];
        repairs = [.. table.Repairs.Select(_ => Place(2))];

        UInt128 Place(int digits)
        {
            var place = size;
            Fits &= size < UInt128.MaxValue / (UInt128)digits;
            size *= (UInt128)digits;
            return place;
        }
    }

    /// <summary>False when there are more situations than a key can tell apart.</summary>
    public bool Fits { get; private set; }

    public UInt128 Answered(UInt128 at, PlanCheck check, int state) => at + ((UInt128)(state + 1) * checks[check.Index]);

    public UInt128 Unsure(UInt128 at, PlanCheck check) => at + ((UInt128)(check.Chances.Length + 1) * checks[check.Index]);

    public UInt128 Failed(UInt128 at, PlanRepair repair) => at + repairs[repair.Index];
}
