using System.Collections.Concurrent;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// After a restore the chat knows of reminders that the data file does not. Before a member is looked at for the first time, their conversation is: what the
/// newest reminder there told, or one before it, is not told again. A member whose newest reminder is noted is left as they are, so it does no harm when
/// this is done though nothing was restored; it only costs two requests for each.
/// </summary>
internal sealed class Recalling(Parts parts, DirectChannels direct, Panels panels)
{
    private const int MostDue = 10_000;

    private readonly ConcurrentDictionary<string, bool> done = new(StringComparer.Ordinal);

    /// <summary>Whether the member may be looked at.</summary>
    public bool IsDone(MemberId member) => done.ContainsKey(member.Value);

    public async Task RoundAsync(IReadOnlySet<ClubId> away, CancellationToken ct)
    {
        foreach (var rider in await parts.Riders.DueAsync(parts.Clock.GetUtcNow(), MostDue, ct))
        {
            if (IsDone(rider.Member) || ClubId.Of(rider.Member) is not { } club || away.Contains(club)) continue;
            try
            {
                if (await direct.OpenAsync(Names.Person(rider.Member), ct) is not { } channel) continue;
                await RecallAsync(rider, channel, ct);
            }
            catch (DiscordException e) when (ReminderDelivery.IsRefusal(e))
            {
                // They cannot be written to, so there is nothing to double; the next message finds it out.
            }
            catch (DiscordException e)
            {
                parts.Log.NotSaid(e.Trouble, e);
                return;
            }

            done[rider.Member.Value] = true;
        }
    }

    private async Task RecallAsync(Rider rider, Snowflake channel, CancellationToken ct)
    {
        if (await panels.NewestAsync(channel, ct) is not { } newest || newest.Id.At <= rider.LastAt) return;
        var noted = Decision.LastOf(rider).Any(id => Names.Mark(id) == Panels.MarkOf(newest));
        if (!noted) await parts.Riders.CatchUpAsync(rider.Member, newest.Id.At, parts.Clock.GetUtcNow(), ct);
    }
}
