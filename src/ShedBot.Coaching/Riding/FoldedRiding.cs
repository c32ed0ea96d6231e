using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>What was ridden on days that are no longer kept one by one.</summary>
/// <param name="First">The first ridden day in it.</param>
/// <param name="Last">The last ridden day in it; before every day that is kept.</param>
/// <param name="Totals">At most one for each weather, in their order.</param>
public sealed record FoldedRiding(LocalDate First, LocalDate Last, ImmutableArray<WeatherTotal> Totals)
{
    /// <param name="day">After <see cref="Last"/>.</param>
    public static FoldedRiding With(FoldedRiding? folded, RiddenDay day) => new(
        folded?.First ?? day.Day,
        day.Day,
        [
            .. (folded?.Totals ?? []).Where(t => t.Weather != day.Weather)
                .Append((folded?.Totals.FirstOrDefault(t => t.Weather == day.Weather) ?? WeatherTotal.None(day.Weather)).With(day))
                .OrderBy(t => t.Weather),
        ]);
}

/// <param name="Days">Ridden days.</param>
/// <param name="DaysWithKilometres">Those of which the distance was told.</param>
/// <param name="DaysWithHours">Those of which the time was told.</param>
public sealed record WeatherTotal(
    Weather Weather, int Days, int DaysWithKilometres, double Kilometres, int DaysWithHours, double Hours)
{
    public static WeatherTotal None(Weather weather) => new(weather, 0, 0, 0, 0, 0);

    public WeatherTotal With(RiddenDay day) => this with
    {
        Days = Days + 1,
        DaysWithKilometres = DaysWithKilometres + (day.Kilometres is null ? 0 : 1),
        Kilometres = Kilometres + (day.Kilometres ?? 0),
        DaysWithHours = DaysWithHours + (day.Hours is null ? 0 : 1),
        Hours = Hours + (day.Hours ?? 0),
    };
}
