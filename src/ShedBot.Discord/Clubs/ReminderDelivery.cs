using System.Collections.Concurrent;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Brings reminders to members, each once: a message carries a nonce, and where it is not known whether it went out the conversation is looked at first. A
/// member whom the platform does not let us write to is not tried again.
/// </summary>
internal sealed class ReminderDelivery(Parts parts, DirectChannels direct, Panels panels)
{
    private const string Prefix = "nudge/";
    private const int MostPlaces = 10_000, MostLost = 3;

    /// <summary>One whose message was not taken is left alone for so long.</summary>
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);

    /// <summary>Places whose message may have gone out without our knowing.</summary>
    private readonly ConcurrentDictionary<string, bool> unsure = new(StringComparer.Ordinal);

    private readonly ConcurrentDictionary<string, DateTimeOffset> resting = new(StringComparer.Ordinal);
    private readonly ReminderMentions mentions = new(parts, panels);

    /// <summary>Whether what waits in a place is a reminder; everything else belongs to a case.</summary>
    public static bool IsFor(string place) => place.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>After a start: whatever waits may have gone out before the last process ended.</summary>
    public void DoubtAll(IEnumerable<string> places)
    {
        foreach (var place in places.Where(IsFor)) unsure[place] = true;
    }

    /// <param name="away">Clubs that have sent us away: their members hear nothing.</param>
    public async Task RoundAsync(IReadOnlySet<ClubId> away, CancellationToken ct)
    {
        var lost = 0;
        foreach (var place in (await parts.Clubs.UnsaidPlacesAsync(MostPlaces, ct)).Where(IsFor))
        {
            var member = new MemberId(place[Prefix.Length..]);
            if (ClubId.Of(member) is not { } club || away.Contains(club) || IsResting(place)) continue;
            var trouble = await TryAsync(member, club, place, ct);
            // When the platform is down it is down for everybody: the others wait for another round.
            if (trouble == Trouble.Token || (trouble == Trouble.Busy && ++lost == MostLost)) return;
        }
    }

    private bool IsResting(string place) => resting.TryGetValue(place, out var since) && parts.Clock.GetUtcNow() - since < Rest;

    /// <returns>What stood in the way, or null when all was said that may be said now.</returns>
    private async Task<Trouble?> TryAsync(MemberId member, ClubId club, string place, CancellationToken ct)
    {
        try
        {
            await SpeakAsync(member, club, place, ct);
            resting.TryRemove(place, out _);
            return null;
        }
        catch (DiscordException e)
        {
            (unsure[place], resting[place]) = (true, parts.Clock.GetUtcNow());
            parts.Log.NotSaid(e.Trouble, e);
            return e.Trouble;
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // One that cannot be said keeps nobody else waiting.
            (unsure[place], resting[place]) = (true, parts.Clock.GetUtcNow());
            parts.Log.Failed(e);
            return null;
        }
    }

    private async Task SpeakAsync(MemberId member, ClubId club, string place, CancellationToken ct)
    {
        while (await parts.Store.UnsaidAsync(place, 1, ct) is [var message])
        {
            var now = parts.Clock.GetUtcNow();
            if (!await parts.Riders.MaySendAsync(member, now, ct)) return;
            var rider = await parts.Riders.FindAsync(member, ct);
            if (Fallback.IsMention(message)) await mentions.MakeAsync(rider, club, message, unsure.ContainsKey(place), ct);
            // Whoever has said no since, or cannot be written to, gets none.
            else if (rider is { Consent: Consent.Given, Refused: false } && !await SendAsync(rider, club, message, unsure.ContainsKey(place), ct)) return;
            await parts.Store.MarkSaidAsync(message.Id, ct);
            unsure.TryRemove(place, out _);
        }
    }

    /// <returns>False when it has to wait.</returns>
    private async Task<bool> SendAsync(Rider rider, ClubId club, OutboxMessage message, bool doubt, CancellationToken ct)
    {
        var person = Names.Person(rider.Member);
        try
        {
            if (await direct.OpenAsync(person, ct) is not { } channel) return false;
            var mark = Names.Mark(message.Id);
            var (there, at) = (doubt ? await panels.FindAsync(channel, mark, ct) : null, parts.Clock.GetUtcNow());
            if (there is null)
            {
                var drawn = CardDrawing.Single([message.Card], ReminderControls.Of(club, message.Card), mark, null, AllowedMentions.None);
                await parts.Rest.PostMessageAsync(channel, drawn.Body with { Nonce = Names.Nonce(message.Id), EnforceNonce = true }, [], ct);
            }

            // One that an earlier process has sent went out then: it must not take the place of today's.
            await parts.Riders.WentOutAsync(rider.Member, there is null || there.Id.At > at ? at : there.Id.At, ct);
        }
        catch (DiscordException e) when (IsRefusal(e))
        {
            direct.Forget(person);
            parts.Log.DmRefused(e.Code);
            await parts.Riders.RefusedAsync(rider.Member, parts.Clock.GetUtcNow(), ct);
        }

        return true;
    }

    /// <summary>Only what the platform itself says of this member counts; a page of some machine in between has no number.</summary>
    public static bool IsRefusal(DiscordException e) => e.Code != 0 && e.Trouble is Trouble.DmRefused or Trouble.Forbidden or Trouble.Gone;
}
