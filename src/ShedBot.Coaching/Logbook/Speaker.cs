using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Logbook;

/// <summary>Who talks of their bike, and in whose days and units.</summary>
/// <param name="TimeZone">An IANA zone; one that is not known counts as UTC.</param>
/// <param name="Ways">How this place puts what can be done next.</param>
public sealed record Speaker(MemberId Member, Units Units, string TimeZone, Ways Ways)
{
    /// <summary>The member in their own zone and units, where they told them.</summary>
    /// <param name="units">Those of the club.</param>
    /// <param name="timeZone">That of the club, an IANA zone.</param>
    public static Speaker Of(Rider rider, Units units, string timeZone, Ways ways) => new(rider.Member, rider.Units ?? units, rider.Zone ?? timeZone, ways);

    internal DateTimeZone Zone => DateTimeZoneProviders.Tzdb.GetZoneOrNull(TimeZone) ?? DateTimeZone.Utc;

    /// <returns>The rider's own day at a time.</returns>
    internal LocalDate DayOf(DateTimeOffset at) => RiderDays.Of(at, Zone);
}

/// <summary>How a place puts what can be done next; each completes "... to" or stands for itself.</summary>
/// <param name="Ride">As in <c>rode 12 km</c>.</param>
/// <param name="Undo">As in <c>undo</c>.</param>
/// <param name="Whole">Shows the whole plan.</param>
/// <param name="Fitted">Tells when the kit was fitted.</param>
/// <param name="Done">With {0} for the task.</param>
/// <param name="How">With {0} for the task.</param>
/// <param name="Trouble">How a trouble is told.</param>
/// <param name="SetUp">Begins the guided set-up; empty where there is none.</param>
/// <param name="NewBike">As in "bike new, and a name".</param>
/// <param name="UseBike">As in "bike use, and its name".</param>
public sealed record Ways(
    string Ride, string Pace, string Undo, string Plan, string Whole, string Fitted, string Done, string How, string Trouble, string SetUp = "", string NewBike = "", string UseBike = "");
