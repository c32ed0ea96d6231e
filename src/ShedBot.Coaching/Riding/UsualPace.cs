namespace ShedBot.Coaching.Riding;

/// <summary>What is taken for granted of a rider of whom nothing is known. Common practice, no source.</summary>
internal static class UsualPace
{
    public const double DaysPerWeek = 3;

    public const double Kilometres = 10;

    public const double KilometresPerHour = 20;

    /// <summary>Standard deviation of a riding day's amount, as a share of its mean.</summary>
    public const double Spread = 0.5;

    /// <summary>The distance of a riding day: as stated, else from the time.</summary>
    /// <param name="loggedHours">The logged time of a riding day, or null.</param>
    public static double KilometresOf(StatedPace? pace, double? loggedHours) =>
        pace?.KilometresPerDay ?? ((pace?.HoursPerDay ?? loggedHours) is { } hours ? hours * KilometresPerHour : Kilometres);

    /// <summary>The time of a riding day: as stated, else from the distance.</summary>
    /// <param name="loggedKilometres">The logged distance of a riding day, or null.</param>
    public static double HoursOf(StatedPace? pace, double? loggedKilometres) =>
        pace?.HoursPerDay ?? ((pace?.KilometresPerDay ?? loggedKilometres ?? Kilometres) / KilometresPerHour);

    /// <summary>
    /// So many days without a ride do not fit the chance of a ride: in less than 1 of 50 such stretches nothing would have been ridden. 7 to 60.
    /// </summary>
    public static int QuietDays(double chance) => (int)Math.Clamp(Math.Ceiling(Math.Log(0.02) / Math.Log(1 - chance)), 7, 60);

    public static double ChanceOf(StatedPace? pace) => Math.Clamp((pace?.DaysPerWeek ?? DaysPerWeek) / 7, 0.02, 0.98);
}
