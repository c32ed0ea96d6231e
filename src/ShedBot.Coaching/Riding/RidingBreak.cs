using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>A time in which the bike rests.</summary>
/// <param name="From">The first day of rest.</param>
/// <param name="Until">The first day on which it may be ridden again, after <paramref name="From"/>; null while nobody knows.</param>
public sealed record RidingBreak(LocalDate From, LocalDate? Until)
{
    public bool Covers(LocalDate day) => day >= From && !(day >= Until);
}
