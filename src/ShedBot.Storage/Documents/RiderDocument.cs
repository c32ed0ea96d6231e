using LiteDB;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Storage.Documents;

/// <summary>A member's wishes about reminders, and what they were told, as they are stored.</summary>
internal static class RiderDocument
{
    public const string Collection = "riders";

    /// <summary>The next look as a text that sorts as the time does; null for whoever is not to be looked at.</summary>
    public const string ByLook = "byLook";

    private const string Version = "version";
    private static readonly LocalTimePattern Time = LocalTimePattern.ExtendedIso;

    public static BsonDocument ToBson(Rider r) => Seal.Close(new BsonDocument
    {
        ["_id"] = Keys.Checked(r.Member.Value, "member id"),
        [ByLook] = r.NextLook is { } look ? Times.Key(look) : BsonValue.Null,
        ["nextLook"] = Times.ToBson(r.NextLook),
        ["consent"] = r.Consent.ToString(),
        ["zone"] = r.Zone,
        ["units"] = r.Units?.ToString(),
        ["bike"] = r.Bike is { } bike ? Keys.Checked(bike.Value, "bike id") : BsonValue.Null,
        ["preferred"] = Time.Format(r.Preferred),
        ["quietFrom"] = Time.Format(r.Quiet.From),
        ["quietUntil"] = Time.Format(r.Quiet.Until),
        ["stopped"] = new BsonArray(r.Stopped.Select(s => new BsonValue(s))),
        ["later"] = new BsonArray(r.Later.Select(LaterToBson)),
        ["told"] = new BsonArray(r.Told.Select(ToldToBson)),
        ["lastAt"] = Times.ToBson(r.LastAt),
        ["lastDay"] = Days.ToBson(r.LastDay),
        ["lastEvening"] = Days.ToBson(r.LastEvening),
        ["unanswered"] = r.Unanswered,
        ["silent"] = r.Silent,
        ["place"] = r.Place,
        ["refused"] = r.Refused,
        ["note"] = r.Note,
        [Version] = r.Version,
    });

    public static Rider FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new Rider(
            new MemberId(f.Text("_id")),
            f.Named<Consent>("consent"),
            f.TextOrNull("zone"),
            f.TextOrNull("units") is null ? null : f.Named<Units>("units"),
            f.TextOrNull("bike") is { } bike ? new BikeId(bike) : null,
            TimeOf(f, "preferred"),
            new QuietHours(TimeOf(f, "quietFrom"), TimeOf(f, "quietUntil")),
            f.Texts("stopped"),
            f.List("later", LaterFromBson),
            f.List("told", ToldFromBson),
            f.TimeOrNull("lastAt"),
            f.DayOrNull("lastDay"),
            f.DayOrNull("lastEvening"),
            f.Whole("unanswered"),
            f.Flag("silent"),
            f.TextOrNull("place"),
            f.Flag("refused"),
            f.Flag("note"),
            f.TimeOrNull("nextLook"),
            f.Whole(Version));
    }

    private static LocalTime TimeOf(Fields f, string name) =>
        Time.Parse(f.Text(name)) is { Success: true } read ? read.Value : throw f.Wrong(name, "a time of day");

    private static BsonDocument LaterToBson(Postponed p) => new BsonDocument { ["key"] = p.DueKey, ["until"] = Times.ToBson(p.Until), ["tonight"] = p.Tonight };

    private static Postponed LaterFromBson(Fields f) => new(f.Text("key"), f.Time("until"), f.Flag("tonight"));

    private static BsonDocument ToldToBson(Told t) => new BsonDocument { ["key"] = t.DueKey, ["day"] = Days.ToBson(t.Day) };

    private static Told ToldFromBson(Fields f) => new(f.Text("key"), f.Day("day"));
}
