using NodaTime;

namespace ShedBot.Coaching.Nudging;

/// <summary>What "later" means. Common practice, no source.</summary>
internal static class Postponing
{
    private static readonly LocalTime Six = new(18, 0), Eight = new(20, 0), Ten = new(10, 0);

    /// <returns>Six in the evening, or eight when that has passed; null when neither is left today, or today's evening had its reminder.</returns>
    public static DateTimeOffset? Tonight(RiderClock clock) => clock.HadEvening ? null : clock.StillToday(Six, Eight);

    /// <summary>"Tonight" when there is none left is tomorrow at the usual time; Saturday is the next one after today, at ten.</summary>
    public static (DateTimeOffset Until, bool Tonight) Until(NudgeVerb verb, RiderClock clock) => verb switch
    {
        NudgeVerb.Tonight => Tonight(clock) is { } tonight ? (tonight, true) : (clock.Slot(clock.Today.PlusDays(1)), false),
        NudgeVerb.Weekend => (clock.On(clock.Today.Next(IsoDayOfWeek.Saturday), Ten), false),
        _ => (clock.Slot(clock.Today.PlusDays(7)), false),
    };
}
