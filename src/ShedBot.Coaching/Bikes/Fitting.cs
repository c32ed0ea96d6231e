using NodaTime;
using NodaTime.Text;

namespace ShedBot.Coaching.Bikes;

/// <summary>The day the kit was fitted: a fact of the profile whose value is a date, <c>2026-05-03</c>.</summary>
public static class Fitting
{
    /// <summary>Its id among the facts, and the event of that day in service rules.</summary>
    public const string Fact = "fitted";

    /// <returns>The day, or null when it is not known.</returns>
    public static LocalDate? DayOf(BikeProfile bike) =>
        bike.Facts.TryGetValue(Fact, out var fact) && LocalDatePattern.Iso.Parse(fact.Value) is { Success: true } read ? read.Value : null;

    /// <param name="how">told, heard or done.</param>
    /// <returns>The bike after, or the refusal <c>future</c>.</returns>
    public static Result<BikeProfile> Set(BikeProfile bike, LocalDate day, LocalDate today, DateTimeOffset now, string how) => day > today
        ? new Refusal("future", $"{Riding.Dates.Say(day)} is still to come.")
        : bike with { Facts = bike.Facts.SetItem(Fact, new BikeFact(LocalDatePattern.Iso.Format(day), now, how)) };
}
