using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What everything in a club works with.</summary>
/// <param name="Coaches">Asked each time, so that what a club has published serves the next turn.</param>
internal sealed record Parts(
    IShedStore Store,
    IClubStore Clubs,
    IArrivalStore Arrived,
    CaseDesk Desk,
    BikeDesk Logbook,
    RiderDesk Riders,
    ICoaches Coaches,
    IDiscordRest Rest,
    CardPictures Pictures,
    TimelinePainter Paint,
    ITeachingStore Teaching,
    TeachDesk Rules,
    TrialPainter PaintTrial,
    CalibrationPainter PaintCalibration,
    FileFetch Files,
    TimeProvider Clock,
    Identity Me,
    ILogger Log);

/// <summary>Who we are on the platform; known once the first session has begun.</summary>
internal sealed class Identity
{
    private ulong user, application;

    public Snowflake User => new(Volatile.Read(ref user));

    public Snowflake Application => new(Volatile.Read(ref application));

    /// <summary>How members write our name in a message.</summary>
    public string Mention => $"<@{User}>";

    public void Set(Snowflake me, Snowflake app)
    {
        Volatile.Write(ref user, me.Value);
        Volatile.Write(ref application, app.Value);
    }
}
