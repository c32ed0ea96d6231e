using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Clubs;

/// <summary>What is to be looked after without anybody asking: words that could not be said yet, rooms of closed cases, clubs that sent us away.</summary>
internal sealed class Upkeep(Parts parts, Rooms rooms, Delivery delivery, ReminderDelivery reminders, WordDelivery words, TimeSpan keepAfterLeaving)
{
    private const int MostPlaces = 10_000;

    public static readonly TimeSpan Every = TimeSpan.FromSeconds(30);

    /// <summary>After a start. Whatever waits may have gone out before the last process ended, so each thread is looked at before anything is said again.</summary>
    public async Task<int> BeginAsync(CancellationToken ct)
    {
        await rooms.LoadAsync(ct);
        var waiting = await parts.Clubs.UnsaidPlacesAsync(MostPlaces, ct);
        delivery.DoubtAll(waiting.Where(IsOfACase));
        reminders.DoubtAll(waiting);
        words.DoubtAll(waiting);
        return waiting.Length;
    }

    public async Task RoundAsync(CancellationToken ct)
    {
        foreach (var place in await parts.Clubs.UnsaidPlacesAsync(MostPlaces, ct))
        {
            if (IsOfACase(place) && delivery.IsDue(place)) await delivery.SpeakAsync(place, null, null, ct);
        }

        await PutAwayAsync(ct);
        await RemoveAsync(ct);
    }

    private static bool IsOfACase(string place) => !ReminderDelivery.IsFor(place) && !WordDelivery.IsFor(place);

    /// <summary>Rooms whose case was closed, and that could not be put away then.</summary>
    private async Task PutAwayAsync(CancellationToken ct)
    {
        foreach (var room in await parts.Clubs.OpenRoomsAsync(ct))
        {
            try
            {
                if (await parts.Store.FindLastCaseAsync(room.Member, room.Place, ct) is { IsClosed: true } @case
                    && (await parts.Store.UnsaidAsync(room.Place, 1, ct)).IsEmpty)
                {
                    await delivery.PutAwayAsync(room, @case, ct);
                }
            }
            catch (DiscordException e)
            {
                parts.Log.NotTidied(e.Trouble, e);
                if (e.Trouble == Trouble.Gone) await rooms.ChangeAsync(room.Place, r => r with { State = RoomState.Gone }, ct);
            }
        }
    }

    private async Task RemoveAsync(CancellationToken ct)
    {
        var now = parts.Clock.GetUtcNow();
        foreach (var club in await parts.Clubs.ClubsAsync(ct))
        {
            if (club.LeftAt is not { } left || now - left < keepAfterLeaving) continue;
            var removed = await parts.Clubs.ForgetClubAsync(club.Id, ct);
            parts.Log.Removed(club.Id.Value, removed.Cases, removed.Bikes);
        }
    }
}
