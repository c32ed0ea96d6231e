namespace ShedBot.Practice;

/// <summary>A clock that stands still, so that the same script always gives the same words.</summary>
internal sealed class FrozenClock(DateTimeOffset at) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => at;
}
