using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Has clubs' cases looked over without anybody asking, one club after the other, in rounds of its own: a count or a trial keeps nobody waiting. Whether
/// anything is due is for the desk to say.
/// </summary>
internal sealed class LearningKeeper(Parts parts)
{
    /// <summary>The desk looks over a club once a day at most, so asking it oftener is only for what has come meanwhile.</summary>
    private static readonly TimeSpan Between = TimeSpan.FromHours(1);

    private readonly ConcurrentDictionary<ClubId, DateTimeOffset> asked = new();

    /// <summary>Something happened after which the club's cases may have to be looked over at once.</summary>
    public void Soon(ClubId club) => asked.TryRemove(club, out _);

    public void After(TeachRequest request, ClubId club)
    {
        if (request is ChooseTeaching or TakeBack or NeverLearn) Soon(club);
    }

    public async Task RoundAsync(CancellationToken ct)
    {
        foreach (var club in await parts.Clubs.ClubsAsync(ct))
        {
            var now = parts.Clock.GetUtcNow();
            if (club.LeftAt is not null || (asked.TryGetValue(club.Id, out var at) && (now - at).Duration() < Between)) continue;
            // Before the round: what happens while it goes on is looked at in the next.
            asked[club.Id] = now;
            try
            {
                var news = await parts.Rules.RoundAsync(club.Id, now, ct);
                if (news.Outcome is RoundOutcome.Proposed or RoundOutcome.Published or RoundOutcome.CountedAnew) parts.Log.LookedOver(club.Id.Value, news.Outcome, news.Edition);
            }
            catch (Exception e) when (!ct.IsCancellationRequested)
            {
                parts.Log.NotLookedOver(club.Id.Value, e);
            }
        }
    }
}
