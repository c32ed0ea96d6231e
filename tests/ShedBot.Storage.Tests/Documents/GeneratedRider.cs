using CsCheck;
using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>Whatever can be stored of a member's wishes about reminders.</summary>
internal static class GeneratedRider
{
    private static readonly Gen<LocalTime> Time = Gen.Long[0, NodaConstants.NanosecondsPerDay - 1].Select(LocalTime.FromNanosecondsSinceMidnight);

    private static readonly Gen<LocalDate> Day = Gen.Int[0, 3_652_058].Select(d => new LocalDate(1, 1, 1).PlusDays(d));

    private static readonly Gen<LocalDate?> DayOrNull = Gen.OneOf(Day.Select(d => (LocalDate?)d), Gen.Const((LocalDate?)null));

    private static readonly Gen<DateTimeOffset?> MomentOrNull = Gen.OneOf(Generated.Time.Select(t => (DateTimeOffset?)t), Gen.Const((DateTimeOffset?)null));

    private static readonly Gen<string?> TextOrNull = Gen.OneOf(Generated.Text.Select(t => (string?)t), Gen.Const((string?)null));

    public static readonly Gen<Rider> Rider =
        from member in Generated.Key
        from consent in Gen.Enum<Consent>()
        from texts in Gen.Select(TextOrNull, TextOrNull)
        from own in Gen.Select(Gen.OneOf(Gen.Const((Units?)null), Gen.Enum<Units>().Select(u => (Units?)u)), Gen.OneOf(Gen.Const((BikeId?)null), Generated.Key.Select(k => (BikeId?)new BikeId(k))))
        from times in Gen.Select(Time, Time, Time)
        from stopped in Generated.List(Generated.Text)
        from later in Generated.List(Gen.Select(Generated.Text, Generated.Time, Gen.Bool, (key, until, tonight) => new Postponed(key, until, tonight)))
        from told in Generated.List(Gen.Select(Generated.Text, Day, (key, day) => new Told(key, day)))
        from moments in Gen.Select(MomentOrNull, MomentOrNull)
        from days in Gen.Select(DayOrNull, DayOrNull)
        from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
        from numbers in Gen.Select(Gen.Int, Gen.Int[1, int.MaxValue])
        select new Rider(
            new MemberId(member), consent, texts.Item1, own.Item1, own.Item2, times.Item1, new QuietHours(times.Item2, times.Item3), stopped, later, told,
            moments.Item1, days.Item1, days.Item2, numbers.Item1, flags.Item1, texts.Item2, flags.Item2, flags.Item3, moments.Item2, numbers.Item2);
}
