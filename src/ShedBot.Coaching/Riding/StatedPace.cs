using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>How much somebody says they ride: "about 4 days a week, 10 km a day".</summary>
/// <param name="DaysPerWeek">Above 0, at most 7.</param>
/// <param name="KilometresPerDay">Per riding day; null when it was not said.</param>
/// <param name="HoursPerDay">Per riding day; null when it was not said.</param>
/// <param name="Since">The first day it holds for.</param>
public sealed record StatedPace(double DaysPerWeek, double? KilometresPerDay, double? HoursPerDay, LocalDate Since);
