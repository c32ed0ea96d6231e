using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>What a pace rests on most.</summary>
public enum PaceBasis
{
    /// <summary>What was logged.</summary>
    Logged,

    /// <summary>What the rider said.</summary>
    Stated,

    /// <summary>Nothing of this rider's yet: what is usual.</summary>
    Usual,
}

/// <summary>How somebody rides now, as far as it can be told.</summary>
/// <param name="Chances">The chance of riding on a day outside breaks, in (0, 1), Monday first; seven.</param>
/// <param name="DaysPerWeek">Riding days in a week without a break, above 0 and below 7.</param>
/// <param name="Doubt">How far the true rate may be off: the variance of (true rate / this rate); 0 or more.</param>
/// <param name="Clumping">How much more a week's riding days vary than if each day were decided by itself: 1 is no more; above 0. Bad weather clumps.</param>
/// <param name="Kilometres">A riding day.</param>
/// <param name="Hours">A riding day.</param>
/// <param name="Weathers">The share of each weather among riding days; adds up to 1.</param>
/// <param name="LoggedDays">How many days of the log speak for it, the recent ones fully and older ones less.</param>
/// <param name="QuietSince">Set when more days passed without a ride than fit the pace and nothing else tells what happened: the last ridden day.</param>
public sealed record Pace(
    ImmutableArray<double> Chances,
    double DaysPerWeek,
    double Doubt,
    double Clumping,
    Amount Kilometres,
    Amount Hours,
    ImmutableArray<double> Weathers,
    PaceBasis Basis,
    double LoggedDays,
    LocalDate? QuietSince)
{
    public double ChanceOn(LocalDate day) => Chances[(int)day.DayOfWeek - 1];
}

/// <summary>A quantity that differs from riding day to riding day.</summary>
/// <param name="Mean">Above 0.</param>
/// <param name="Variance">0 or more.</param>
public readonly record struct Amount(double Mean, double Variance);
