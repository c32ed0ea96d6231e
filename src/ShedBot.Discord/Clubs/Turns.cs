using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Clubs;

/// <summary>One turn of a case that has a room: taken, kept, said.</summary>
internal sealed class Turns(Parts parts, Delivery delivery, RightsCheck rights)
{
    /// <param name="live">The interaction that waits for an answer, or null.</param>
    /// <param name="owner">What the club calls the member, where it is at hand.</param>
    /// <param name="cameIn">When the event came in.</param>
    /// <param name="about">The bike that was named, or null: the one in use.</param>
    public async Task<Case> TakeAsync(
        Room room, Incoming incoming, Acknowledgement? live, string? owner, DateTimeOffset cameIn, CancellationToken ct, BikeId? about = null)
    {
        var after = await parts.Desk.HandleAsync(room.Member, room.Place, incoming, ct, about);
        parts.Log.Took(after.Id, after.Turn, after.Phase, (parts.Clock.GetUtcNow() - cameIn).TotalMilliseconds);
        var stopped = await delivery.SpeakAsync(room.Place, live, owner, ct);
        if (stopped is not null && live is not null) await ExplainAsync(room, stopped, live, ct);
        return after;
    }

    /// <summary>It is kept, and will be said when it can be; whoever is waiting is told what stands in the way.</summary>
    private async Task ExplainAsync(Room room, DiscordException why, Acknowledgement live, CancellationToken ct)
    {
        if (why.Trouble is Trouble.Forbidden or Trouble.Locked)
        {
            var missing = await rights.MissingAsync(room.Club, room.Channel, ct);
            await live.TellAsync(Texts.Draw(Texts.Lacking(missing.IsEmpty ? ["leave to write in this thread (it may be locked)"] : missing), $"<#{room.Channel}>"), ct);
        }
        else
        {
            await live.TellAsync(Texts.Draw(Texts.SoonSaid), ct);
        }
    }
}
