using NodaTime;
using NodaTime.Text;

namespace ShedBot.Coaching.Riding;

/// <summary>Days in words.</summary>
public static class Dates
{
    private static readonly LocalDatePattern Plain = LocalDatePattern.CreateWithInvariantCulture("d MMM uuuu");

    /// <returns>As in "3 May 2026".</returns>
    public static string Say(LocalDate day) => Plain.Format(day);

    /// <returns>ISO 8601, as in "2026-05-03".</returns>
    public static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
