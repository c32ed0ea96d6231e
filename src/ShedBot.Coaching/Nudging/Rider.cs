using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Nudging;

/// <summary>Whether a member wants to be reminded. Stored by name: never rename a member.</summary>
public enum Consent
{
    NotAsked,

    /// <summary>Asked, and not answered; not asked again.</summary>
    Asked,
    Given,
    Withheld,
}

/// <summary>A member's own settings, their wishes about reminders, and what they were told. One for each member, whatever the number of bikes.</summary>
/// <param name="Zone">An IANA zone, or null: the club's.</param>
/// <param name="Units">The units they think in, or null: the club's.</param>
/// <param name="Bike">The bike they talk of unless they name another, or null: their first.</param>
/// <param name="Preferred">The time of day at which they like to be written to.</param>
/// <param name="Stopped">Ids of tasks of which they want to hear no more, in order.</param>
/// <param name="Later">What they asked to be reminded of again; at most one for each due key.</param>
/// <param name="Told">What they were told, oldest first, at most <see cref="MostTold"/> beyond what is in the plan.</param>
/// <param name="LastAt">When the last message went out, or null.</param>
/// <param name="LastDay">The member's own day of it.</param>
/// <param name="LastEvening">The day of the last reminder that they had asked for with "tonight", or null.</param>
/// <param name="Unanswered">Digests in a row without a sign of life; 0 to <see cref="Nudger.MostUnanswered"/>.</param>
/// <param name="Silent">True once they were asked whether to go on: nothing more is said until they do something.</param>
/// <param name="Place">Where they may be mentioned once when they cannot be written to, as the platform names it; null: a note at their next command.</param>
/// <param name="Refused">True once the platform did not let a direct message through: none is tried until they ask.</param>
/// <param name="Note">True while a note waits for their next command.</param>
/// <param name="NextLook">When it is to be decided again, or null: not before the member does something.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record Rider(
    MemberId Member,
    Consent Consent,
    string? Zone,
    Units? Units,
    BikeId? Bike,
    LocalTime Preferred,
    QuietHours Quiet,
    ImmutableArray<string> Stopped,
    ImmutableArray<Postponed> Later,
    ImmutableArray<Told> Told,
    DateTimeOffset? LastAt,
    LocalDate? LastDay,
    LocalDate? LastEvening,
    int Unanswered,
    bool Silent,
    string? Place,
    bool Refused,
    bool Note,
    DateTimeOffset? NextLook,
    int Version)
{
    /// <summary>So many due keys are remembered that are in no plan any more, for entries that are taken back.</summary>
    public const int MostTold = 300;

    public static Rider New(MemberId member) => new(
        member, Consent.NotAsked, null, null, null, new LocalTime(18, 0), QuietHours.Usual, [], [], [], null, null, null, 0, false, null, false, false, null, 0);
}

/// <summary>A due date that the member was told of.</summary>
/// <param name="DueKey">As in <see cref="Service.PlanItem.DueKey"/>.</param>
/// <param name="Day">The member's own day of the message that told it last.</param>
public sealed record Told(string DueKey, LocalDate Day);

/// <summary>A due date that the member asked to be told of again.</summary>
/// <param name="Until">Not before this moment.</param>
/// <param name="Tonight">True when they asked for the same evening: that may be the second message of a day.</param>
public sealed record Postponed(string DueKey, DateTimeOffset Until, bool Tonight);
