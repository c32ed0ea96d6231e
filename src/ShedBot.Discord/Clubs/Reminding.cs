using ShedBot.Coaching.Clubs;

namespace ShedBot.Discord.Clubs;

/// <summary>Looks again and again who is to be reminded, and brings it to them. It has its own rounds, so that a slow one keeps no case waiting.</summary>
/// <param name="recalling">Where the data file may be older than the chat, else null.</param>
internal sealed class Reminding(Parts parts, ReminderDelivery delivery, Recalling? recalling)
{
    public async Task RoundAsync(CancellationToken ct)
    {
        var away = (await parts.Clubs.ClubsAsync(ct)).Where(c => c.LeftAt is not null).Select(c => c.Id).ToHashSet();
        if (recalling is not null) await recalling.RoundAsync(away, ct);
        var round = await parts.Riders.RoundAsync(
            parts.Clock.GetUtcNow(), ct, member => ClubId.Of(member) is { } club && !away.Contains(club) && recalling?.IsDone(member) != false);
        foreach (var (_, why) in round.Failed) parts.Log.NotLookedAt(why);
        await delivery.RoundAsync(away, ct);
    }
}
