namespace ShedBot.Practice;

/// <summary>A clock that stands still until it is moved, so that the same script always gives the same words. Its zone is UTC wherever it stands.</summary>
internal sealed class FrozenClock(DateTimeOffset at) : TimeProvider
{
    private DateTimeOffset now = at;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => now;

    public void MoveTo(DateTimeOffset to) => now = to.ToUniversalTime();
}
