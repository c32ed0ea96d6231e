namespace ShedBot.Knowledge.Rules;

/// <summary>How far it is to a service task: 14 riding days, 10 hours, 50 km, 365 days.</summary>
/// <param name="Amount">
/// Above 0. Only where a task comes after an event may it be 0: then it is due as soon as the event has happened, before the next ride.
/// </param>
public readonly record struct Interval(double Amount, Measure Measure)
{
    /// <summary>Due as soon as the event has happened, before the next ride.</summary>
    public static Interval BeforeTheNextRide { get; } = new(0, Measure.RidingDays);
}

/// <summary>What an interval is counted in.</summary>
public enum Measure
{
    /// <summary>Days on which the bike was ridden, however far.</summary>
    RidingDays,

    /// <summary>Hours with the engine running.</summary>
    Hours,

    Kilometres,

    /// <summary>Days of the calendar, ridden or not.</summary>
    Days,
}
