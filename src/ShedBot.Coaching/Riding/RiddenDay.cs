using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>A day on which the bike was ridden, with all that was ridden on it.</summary>
/// <param name="Day">In the rider's own zone at the time.</param>
/// <param name="Kilometres">Above 0 and at most <see cref="MostKilometres"/>; null when it was not told.</param>
/// <param name="Hours">Above 0 and at most 24; null when it was not told.</param>
/// <param name="Weather">Of several rides the worst: wet before dusty before dry.</param>
public sealed record RiddenDay(LocalDate Day, double? Kilometres, double? Hours, Weather Weather)
{
    /// <summary>More than anybody rides such a bike in a day: a slip of the finger. Common practice, no source.</summary>
    public const double MostKilometres = 500;

    public const double MostHours = 24;

    /// <summary>Parts of a thousand are kept, so that a day adds up the same in any order.</summary>
    private const int Digits = 3;

    /// <summary>Both rides of one day as one.</summary>
    public RiddenDay And(RiddenDay other) => this with
    {
        Kilometres = Sum(Kilometres, other.Kilometres),
        Hours = Sum(Hours, other.Hours),
        Weather = Badness(other.Weather) > Badness(Weather) ? other.Weather : Weather,
    };

    /// <summary>As it is kept.</summary>
    public RiddenDay Rounded() => this with { Kilometres = Round(Kilometres), Hours = Round(Hours) };

    private static double? Sum(double? one, double? other) => one is null ? other : other is null ? one : Round(one + other);

    private static double? Round(double? amount) => amount is { } a ? Math.Round(a, Digits) : null;

    private static int Badness(Weather weather) => weather switch { Weather.Wet => 2, Weather.Dusty => 1, _ => 0 };
}
