using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>When the next message goes out if nothing happens until then. Pure.</summary>
public static class Foresight
{
    /// <param name="to">No further than this.</param>
    /// <returns>Null when nothing is said till then.</returns>
    public static DateTimeOffset? Next(
        Rider rider, ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge, string clubZone, DateTimeOffset from, DateTimeOffset to)
    {
        while (rider.NextLook is { } look && look <= to)
        {
            var at = look > from ? look : from;
            var decided = Nudger.Decide(rider, bikes, knowledge, clubZone, at);
            if (decided.Say is not null) return at;
            rider = decided.After;
            if (rider.NextLook <= at) return null;
        }

        return null;
    }
}
