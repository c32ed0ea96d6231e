using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Practice;

/// <summary>Who talks at the terminal, in their own zone and units; until they told them, in those of the machine and in kilometres.</summary>
internal sealed class Speakers(RiderDesk desk, string zone)
{
    private static readonly Ways Ways = new(
        Ride: "rode 12 km, or rode 40 min wet yesterday",
        Pace: "about 4 days a week, 10 km",
        Undo: "undo",
        Plan: "plan",
        Whole: "plan all",
        Fitted: "kit fitted 1 march",
        Done: "done {0}",
        How: "how {0}",
        Trouble: "say what the bike does, in your own words",
        SetUp: "set up",
        NewBike: "bike new, and a name",
        UseBike: "bike use, and its name");

    public async Task<Speaker> OfAsync(MemberName member, CancellationToken ct) => Speaker.Of(await desk.FindAsync(member.Id, ct), Units.Metric, zone, Ways);

    /// <returns>The zone of the machine as the IANA data name it.</returns>
    public static string ZoneOf(TimeProvider clock)
    {
        var zone = clock.LocalTimeZone;
        return zone.HasIanaId ? zone.Id : TimeZoneInfo.TryConvertWindowsIdToIanaId(zone.Id, out var iana) ? iana : "Etc/UTC";
    }
}
