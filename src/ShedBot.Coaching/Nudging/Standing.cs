using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>How a digest stands by now, for places that show what was done in the message itself. Pure.</summary>
public static class Standing
{
    /// <param name="bikes">All of the member's bikes.</param>
    /// <param name="digest">The member's own day of the message.</param>
    /// <returns>What it told and is due or coming still, with the answers that still make sense; null when nothing of it is.</returns>
    public static Card? Of(
        Rider rider, ImmutableArray<BikeProfile> bikes, LocalDate digest, KnowledgeBase knowledge, string clubZone, DateTimeOffset now)
    {
        var clock = new RiderClock(rider, clubZone, now);
        var told = rider.Told.Where(t => t.Day == digest).Select(t => t.DueKey).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<DueItem> open =
        [
            .. DueItem.Of(bikes, knowledge, clock.Today, clock.Zone)
                .Where(d => told.Contains(d.Key) && (d.IsDue(clock.Today) || d.IsSoon(clock.Today)) && !rider.Stopped.Contains(d.Item.Rule.Id)),
        ];
        return open.IsEmpty ? null : NudgeCards.Digest(open, 0, clock, evening: false, digest);
    }
}
