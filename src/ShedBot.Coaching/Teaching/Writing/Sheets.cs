using System.Collections.Immutable;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>The guided sheets there are.</summary>
public static class Sheets
{
    /// <summary>In the order in which they are best offered.</summary>
    public static ImmutableArray<Sheet> All { get; } =
    [
        CauseSheet.Sheet, SmallSheets.Check, SmallSheets.Repair, SmallSheets.HowTo, CoverSheet.Sheet, FactSheet.Sheet, ServiceSheet.Sheet,
        WordingSheet.Sheet, StrengthSheet.Sheet, PhraseSheet.Sheet, RetireSheets.Retire, RetireSheets.Restore,
    ];

    public static Sheet? Find(string name) => All.FirstOrDefault(s => s.Name == name);
}
