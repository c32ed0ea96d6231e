using NodaTime;

namespace ShedBot.Coaching.Tests.Riding.Simulated;

/// <summary>How an invented kind of rider rides.</summary>
/// <param name="Name">As in the table.</param>
/// <param name="Chance">The true chance of a ride: day of the simulation, weekday (0 is Monday), whether it is a wet week.</param>
/// <param name="WetWeeks">The share of weeks that are wet.</param>
/// <param name="StatedDays">Days a week as the rider states them on the first day, or null.</param>
/// <param name="Winter">Whether the bike rests from the middle of November to the first of March.</param>
/// <param name="WinterTold">Whether the rider says so on its first day, with its last.</param>
internal sealed record Habit(
    string Name, Func<int, int, bool, double> Chance, double WetWeeks = 0, double? StatedDays = null, bool Winter = false, bool WinterTold = false)
{
    public static readonly Habit[] All =
    [
        new("steady, about 4 days a week", (_, _, _) => 4 / 7.0),
        new("steady, and said so", (_, _, _) => 4 / 7.0, StatedDays: 4),
        new("once a week", (_, _, _) => 1 / 7.0),
        new("weekends", (_, weekday, _) => weekday switch { 5 => 0.85, 6 => 0.7, _ => 0.03 }),
        new("to work and back", (_, weekday, _) => weekday < 5 ? 0.9 : 0.1),
        new("said 6 days a week, rides 2.5", (_, _, _) => 2.5 / 7, StatedDays: 6),
        new("habits change twice", (day, _, _) => day < 150 ? 0.6 : day < 300 ? 0.25 : 0.5),
        new("stays at home in wet weeks", (_, _, wet) => wet ? 0.15 : 0.65, WetWeeks: 0.3),
        new("winter break, told when it begins", (_, _, _) => 0.5, Winter: true, WinterTold: true),
        new("winter break, never told", (_, _, _) => 0.5, Winter: true),
    ];

    public bool Rests(LocalDate day) => Winter && ((day.Month == 11 && day.Day >= 15) || day.Month is 12 or 1 or 2);
}
