namespace ShedBot.Knowledge.Linting;

/// <summary>R050: faults that nothing mends.</summary>
internal static class RepairLook
{
    public static void Look(LintContext lint)
    {
        var mended = lint.Rules.Repairs.SelectMany(r => r.Rule.Mends.Keys).ToHashSet(StringComparer.Ordinal);
        foreach (var fault in lint.Rules.Faults.Where(f => !mended.Contains(f.Rule.Id)))
            lint.Tell(WorkRules.NoRepair, fault, fault.At("id"), $"no repair mends '{fault.Rule.Id}': the coach will hand it over.", "Add it under 'mends' of a repair.");
    }
}
