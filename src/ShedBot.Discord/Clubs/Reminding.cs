using ShedBot.Coaching.Clubs;

namespace ShedBot.Discord.Clubs;

/// <summary>Looks again and again who is to be reminded, and brings it to them. It has its own rounds, so that a slow one keeps no case waiting.</summary>
internal sealed class Reminding(Parts parts, ReminderDelivery delivery)
{
    public async Task RoundAsync(CancellationToken ct)
    {
        var away = (await parts.Clubs.ClubsAsync(ct)).Where(c => c.LeftAt is not null).Select(c => c.Id).ToHashSet();
        var round = await parts.Riders.RoundAsync(parts.Clock.GetUtcNow(), ct, member => ClubId.Of(member) is { } club && !away.Contains(club));
        foreach (var (_, why) in round.Failed) parts.Log.NotLookedAt(why);
        await delivery.RoundAsync(away, ct);
    }
}
