using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Bikes;

/// <summary>What a repair that held changes on the sheet: a new part is of today, and what was measured on the old one is not known any more.</summary>
/// <remarks>By the ids of the repair rules; a repair that is not named here changes nothing.</remarks>
internal static class Renewals
{
    /// <param name="today">The day of the repair.</param>
    public static ImmutableArray<FactTold> Of(string repair, LocalDate today) => repair switch
    {
        "new-pads" => [new(BikeSheet.PadsDate, Dates.Iso(today)), new(BikeSheet.PadsKind, null)],
        "new-bar-and-ball" => [new(BikeSheet.BarLength, null)],
        "fit-return-spring" => [new(BikeSheet.ReturnSpring, "fitted")],
        "new-key" or "new-slotted-part" => [new(BikeSheet.Key, null)],
        "new-shaft-bearing" => [new(BikeSheet.OuterBearing, null)],
        "new-primary-gears" => [new(BikeSheet.Primary, null)],
        _ => [],
    };
}
