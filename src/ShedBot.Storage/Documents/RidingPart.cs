using LiteDB;
using ShedBot.Coaching.Riding;

namespace ShedBot.Storage.Documents;

/// <summary>The riding log, as a part of the stored bike.</summary>
internal static class RidingPart
{
    public static BsonDocument ToBson(RidingLog log) => new BsonDocument
    {
        ["days"] = new BsonArray(log.Days.Select(DayToBson)),
        ["folded"] = log.Folded is { } folded ? FoldedToBson(folded) : BsonValue.Null,
        ["breaks"] = new BsonArray(log.Breaks.Select(BreakToBson)),
        ["pace"] = PaceToBson(log.Pace),
        ["last"] = log.Last is { } last ? UndoToBson(last) : BsonValue.Null,
    };

    public static RidingLog FromBson(Fields f) => new(
        f.List("days", DayFromBson),
        f.PartOrNull("folded") is { } folded ? FoldedFromBson(folded) : null,
        f.List("breaks", BreakFromBson),
        PaceFromBson(f.PartOrNull("pace")),
        f.PartOrNull("last") is { } last ? UndoFromBson(last) : null);

    private static BsonDocument DayToBson(RiddenDay d) => new BsonDocument
    {
        ["day"] = Days.ToBson(d.Day),
        ["km"] = Real(d.Kilometres),
        ["hours"] = Real(d.Hours),
        ["weather"] = d.Weather.ToString(),
    };

    private static RiddenDay DayFromBson(Fields f) =>
        new(f.Day("day"), f.RealOrNull("km"), f.RealOrNull("hours"), f.Named<Weather>("weather"));

    private static BsonDocument FoldedToBson(FoldedRiding folded) => new BsonDocument
    {
        ["first"] = Days.ToBson(folded.First),
        ["last"] = Days.ToBson(folded.Last),
        ["totals"] = new BsonArray(folded.Totals.Select(TotalToBson)),
    };

    private static FoldedRiding FoldedFromBson(Fields f) => new(f.Day("first"), f.Day("last"), f.List("totals", TotalFromBson));

    private static BsonDocument TotalToBson(WeatherTotal t) => new BsonDocument
    {
        ["weather"] = t.Weather.ToString(),
        ["days"] = t.Days,
        ["daysWithKm"] = t.DaysWithKilometres,
        ["km"] = t.Kilometres,
        ["daysWithHours"] = t.DaysWithHours,
        ["hours"] = t.Hours,
    };

    private static WeatherTotal TotalFromBson(Fields f) => new(
        f.Named<Weather>("weather"), f.Whole("days"), f.Whole("daysWithKm"), f.Real("km"), f.Whole("daysWithHours"), f.Real("hours"));

    private static BsonDocument BreakToBson(RidingBreak b) => new BsonDocument { ["from"] = Days.ToBson(b.From), ["until"] = Days.ToBson(b.Until) };

    private static RidingBreak BreakFromBson(Fields f) => new(f.Day("from"), f.DayOrNull("until"));

    private static BsonValue PaceToBson(StatedPace? pace) => pace is null ? BsonValue.Null : new BsonDocument
    {
        ["daysPerWeek"] = pace.DaysPerWeek,
        ["km"] = Real(pace.KilometresPerDay),
        ["hours"] = Real(pace.HoursPerDay),
        ["since"] = Days.ToBson(pace.Since),
    };

    private static StatedPace? PaceFromBson(Fields? part) =>
        part is { } f ? new StatedPace(f.Real("daysPerWeek"), f.RealOrNull("km"), f.RealOrNull("hours"), f.Day("since")) : null;

    private static BsonDocument UndoToBson(RidingUndo u) => new BsonDocument
    {
        ["at"] = Times.ToBson(u.At),
        ["what"] = u.What,
        ["day"] = Days.ToBson(u.Day),
        ["before"] = u.Before is { } before ? DayToBson(before) : BsonValue.Null,
        ["breaks"] = new BsonArray(u.Breaks.Select(BreakToBson)),
        ["pace"] = PaceToBson(u.Pace),
    };

    private static RidingUndo UndoFromBson(Fields f) => new(
        f.Time("at"),
        f.Text("what"),
        f.DayOrNull("day"),
        f.PartOrNull("before") is { } before ? DayFromBson(before) : null,
        f.List("breaks", BreakFromBson),
        PaceFromBson(f.PartOrNull("pace")));

    private static BsonValue Real(double? number) => number is { } n ? n : BsonValue.Null;
}
