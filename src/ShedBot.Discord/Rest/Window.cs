namespace ShedBot.Discord.Rest;

/// <summary>What one answer says about the limit it fell under.</summary>
/// <param name="Bucket">The platform's name of the limit; none where the answer had none.</param>
/// <param name="Limit">Requests a window; 0 where the answer did not say.</param>
/// <param name="ResetAfter">Till the next window.</param>
internal readonly record struct Reading(string? Bucket, int Limit, int Remaining, TimeSpan ResetAfter);

/// <summary>How many requests may still go out under one limit, and when. A plain count: who calls must see to it that one calls at a time.</summary>
/// <remarks>Every moment is a time since some fixed beginning. Source: the platform's description, topics/rate-limits.</remarks>
internal sealed class Window
{
    private int limit;
    private int remaining;
    private TimeSpan length;
    private TimeSpan resetAt;

    public TimeSpan PausedTill { get; private set; }

    private bool Known => limit > 0;

    /// <summary>The first moment at which one more may go; now or earlier means at once.</summary>
    public TimeSpan FreeAt => !Known || remaining > 0 || PausedTill > resetAt ? PausedTill : resetAt;

    public void Sent(TimeSpan now)
    {
        if (!Known)
            return;
        if (now >= resetAt)
        {
            // A new window: till an answer says more, take it for as long as the longest that was seen.
            remaining = limit;
            resetAt = now + length;
        }

        remaining--;
    }

    /// <param name="sole">False when another request was under way in the same window, so that the answers may have come out of order: the lesser figure counts.</param>
    public void Heard(in Reading reading, TimeSpan now, bool sole = true)
    {
        if (reading.Limit <= 0)
            return;
        var till = now + reading.ResetAfter;
        var careful = !sole && Known && now < resetAt;
        remaining = careful ? Math.Min(remaining, reading.Remaining) : reading.Remaining;
        resetAt = careful && resetAt > till ? resetAt : till;
        limit = reading.Limit;
        length = reading.ResetAfter > length ? reading.ResetAfter : length;
    }

    public void Pause(TimeSpan till) => PausedTill = till > PausedTill ? till : PausedTill;

    /// <summary>Nothing that was counted matters any more.</summary>
    public bool Over(TimeSpan now) => now >= resetAt && now >= PausedTill;
}
