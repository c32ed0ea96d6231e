namespace ShedBot.Coaching.Nudging;

/// <summary>What is noted when a message is out. Pure.</summary>
internal static class WentOut
{
    /// <summary>A message that had to wait went out on a later day of the member's than it was decided on: that day has had its message.</summary>
    /// <returns>The rider as they were when there is nothing to note.</returns>
    public static Rider Note(Rider rider, string clubZone, DateTimeOffset at)
    {
        var day = new RiderClock(rider, clubZone, at).Today;
        return rider.LastDay is { } decided && decided < day && rider.LastAt < at
            ? rider with { LastAt = at, LastDay = day, Version = rider.Version + 1 }
            : rider;
    }
}
