using CsCheck;
using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>Whatever riding and service can be stored; what a log may hold is not looked at here.</summary>
internal static class GeneratedRiding
{
    private static readonly Gen<LocalDate> Day = Gen.Int[0, 3_652_058].Select(d => new LocalDate(1, 1, 1).PlusDays(d));

    private static readonly Gen<LocalDate?> DayOrNull = Gen.OneOf(Day.Select(d => (LocalDate?)d), Gen.Const((LocalDate?)null));

    private static readonly Gen<double?> RealOrNull = Gen.OneOf(Generated.Real.Select(r => (double?)r), Gen.Const((double?)null));

    private static readonly Gen<RiddenDay> Ridden =
        Gen.Select(Day, RealOrNull, RealOrNull, Gen.Enum<Weather>(), (day, km, hours, weather) => new RiddenDay(day, km, hours, weather));

    private static readonly Gen<RidingBreak> Break = Gen.Select(Day, DayOrNull, (from, until) => new RidingBreak(from, until));

    private static readonly Gen<StatedPace> Pace =
        Gen.Select(Generated.Real, RealOrNull, RealOrNull, Day, (days, km, hours, since) => new StatedPace(days, km, hours, since));

    private static readonly Gen<WeatherTotal> Total =
        from weather in Gen.Enum<Weather>()
        from counts in Gen.Select(Gen.Int, Gen.Int, Gen.Int)
        from sums in Gen.Select(Generated.Real, Generated.Real)
        select new WeatherTotal(weather, counts.Item1, counts.Item2, sums.Item1, counts.Item3, sums.Item2);

    private static readonly Gen<FoldedRiding> Folded =
        Gen.Select(Day, Day, Generated.List(Total), (first, last, totals) => new FoldedRiding(first, last, totals));

    private static readonly Gen<RidingUndo> Undo =
        from at in Generated.Time
        from what in Generated.Text
        from day in DayOrNull
        from before in OrNull(Ridden)
        from breaks in Generated.List(Break)
        from pace in OrNull(Pace)
        select new RidingUndo(at, what, day, before, breaks, pace);

    public static readonly Gen<RidingLog> Log = Gen.Select(
        Generated.List(Ridden), OrNull(Folded), Generated.List(Break), OrNull(Pace), OrNull(Undo), (d, f, b, p, u) => new RidingLog(d, f, b, p, u));

    public static readonly Gen<ServiceDone> Done =
        from task in Generated.Text
        from day in Day
        from logged in Generated.Time
        from how in Generated.Text
        from c in OrNull(Generated.Key)
        select new ServiceDone(task, day, logged, how, c is null ? null : new CaseId(c));

    private static Gen<T?> OrNull<T>(Gen<T> some)
        where T : class => Gen.OneOf(some.Select(s => (T?)s), Gen.Const((T?)null));
}
