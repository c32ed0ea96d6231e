using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>Counts what one connection has sent in the last minute. The platform closes at once over 120; what may be left out stops at 110, so that there is room for what may not.</summary>
internal sealed class SendBudget(TimeProvider clock)
{
    private const int Ours = Limits.GatewaySends - 10;

    private readonly Queue<long> sent = new();

    /// <param name="needed">A send that keeps the connection alive; it is always let through, and counted.</param>
    /// <returns>False when it must be left out.</returns>
    public bool Take(bool needed)
    {
        while (sent.TryPeek(out var first) && clock.GetElapsedTime(first).TotalSeconds >= Limits.GatewaySendSeconds)
            sent.Dequeue();
        if (!needed && sent.Count >= Ours)
            return false;
        sent.Enqueue(clock.GetTimestamp());
        return true;
    }
}
