namespace ShedBot.Discord.Rest;

/// <summary>Counts the requests that the platform holds against us, and stops us long before it shuts us out.</summary>
/// <remarks>Source: the platform's description, topics/rate-limits: 10,000 answers of 401, 403 and 429 (but for scope <c>shared</c>) within 10 minutes close the door to our address. Where we warn and stop is our own choice.</remarks>
internal sealed class Brake(Ticker ticker, int warnAt, int stopAt)
{
    private static readonly TimeSpan Span = TimeSpan.FromMinutes(10);

    private readonly Lock gate = new();
    private readonly Queue<TimeSpan> invalid = new();

    /// <summary>True once the bot's token was refused: for good, since a wrong token stays wrong.</summary>
    public bool TokenRefused { get; private set; }

    public bool On => Count >= stopAt;

    public int Count
    {
        get
        {
            lock (gate)
                return Trim(ticker.Now);
        }
    }

    /// <returns>The count, when it has just come to where somebody should be told; otherwise null.</returns>
    public int? Add()
    {
        lock (gate)
        {
            var now = ticker.Now;
            invalid.Enqueue(now);
            var count = Trim(now);
            return count == warnAt || count == stopAt ? count : null;
        }
    }

    /// <returns>True the first time.</returns>
    public bool RefuseToken()
    {
        lock (gate)
        {
            var first = !TokenRefused;
            TokenRefused = true;
            return first;
        }
    }

    private int Trim(TimeSpan now)
    {
        // Beyond the stop only interactions are still answered; what is counted need not grow with them.
        while (invalid.Count > stopAt || (invalid.TryPeek(out var oldest) && oldest + Span <= now))
            invalid.Dequeue();
        return invalid.Count;
    }
}
