using NodaTime;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>The real clock, some hours ahead.</summary>
internal sealed class AheadClock(TimeSpan by) : TimeProvider
{
    public TimeSpan By { get; private set; } = by;

    /// <summary>To be used only while nothing is connected: who was silent for so long would be cut off.</summary>
    public void Move(TimeSpan further) => By += further;

    /// <summary>It shows this time in the club just now.</summary>
    public static AheadClock To(int hour, int minute)
    {
        var now = Instant.FromDateTimeOffset(System.GetUtcNow()).InZone(ReminderSteps.Lisbon);
        var then = now.Date.At(new LocalTime(hour, minute));
        if (then <= now.LocalDateTime) then = then.PlusDays(1);
        return new AheadClock((then.InZoneLeniently(ReminderSteps.Lisbon).ToInstant() - now.ToInstant()).ToTimeSpan());
    }

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + By;
}
