using System.Collections.Concurrent;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Tells members alone what became of their tips and proposals, each word once: a message carries a nonce, and where it is not known whether it went out the
/// conversation is looked at first. Nobody is mentioned anywhere: to whoever takes no direct messages it is told beside the answer to their next command.
/// </summary>
internal sealed class WordDelivery(Parts parts, DirectChannels direct, Panels panels)
{
    private const int MostPlaces = 10_000, MostLost = 3;

    /// <summary>One whose message was not taken is left alone for so long.</summary>
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);

    /// <summary>A word that could not be brought to its member for so long is let go.</summary>
    private static readonly TimeSpan TooOld = TimeSpan.FromDays(30);

    private int going;

    /// <summary>Places of members to whom the platform does not let us write; not tried again in this life.</summary>
    private readonly ConcurrentDictionary<string, bool> refused = new(StringComparer.Ordinal);

    /// <summary>Places whose words are being told beside something else just now.</summary>
    private readonly ConcurrentDictionary<string, bool> telling = new(StringComparer.Ordinal);

    /// <summary>Places whose message may have gone out without our knowing.</summary>
    private readonly ConcurrentDictionary<string, bool> unsure = new(StringComparer.Ordinal);

    private readonly ConcurrentDictionary<string, DateTimeOffset> resting = new(StringComparer.Ordinal);

    /// <summary>Whether what waits in a place is such a word.</summary>
    public static bool IsFor(string place) => TeachingPlace.MemberIn(place) is not null;

    /// <summary>After a start: whatever waits may have gone out before the last process ended.</summary>
    public void DoubtAll(IEnumerable<string> places)
    {
        foreach (var place in places.Where(IsFor)) unsure[place] = true;
    }

    /// <summary>Says what waits. Where a round is going on already, what came after it began waits for the next one.</summary>
    public async Task RoundAsync(CancellationToken ct)
    {
        if (Interlocked.Exchange(ref going, 1) == 1) return;
        try
        {
            var waiting = (await parts.Clubs.UnsaidPlacesAsync(MostPlaces, ct)).Where(IsFor).ToList();
            if (waiting.Count == 0) return;
            var away = (await parts.Clubs.ClubsAsync(ct)).Where(c => c.LeftAt is not null).Select(c => c.Id).ToHashSet();
            var lost = 0;
            foreach (var place in waiting)
            {
                var member = TeachingPlace.MemberIn(place)!.Value;
                if (ClubId.Of(member) is not { } club || away.Contains(club) || IsResting(place)) continue;
                var trouble = await TryAsync(member, place, ct);
                // When the platform is down it is down for everybody: the others wait for another round.
                if (trouble == Trouble.Token || (trouble == Trouble.Busy && ++lost == MostLost)) return;
            }
        }
        finally
        {
            Volatile.Write(ref going, 0);
        }
    }

    /// <summary>Tells a member who takes no direct messages, beside an answer that they alone see.</summary>
    /// <remarks>
    /// This alone may tell a word twice: when the process dies, or the platform's answer is lost, between the showing of it and the keeping of that. Such a message
    /// has no nonce; it can be read back by nobody but with the token of that very command, which is a secret, is never kept, and is good for 15 minutes; and the
    /// platform tells nobody that it was shown. Kept first, a word would be lost instead, and a word of thanks twice is the lesser evil.
    /// </remarks>
    public async Task TellBesideAsync(MemberId member, Acknowledgement live, CancellationToken ct)
    {
        var place = TeachingPlace.Of(member);
        if (!refused.ContainsKey(place) || !telling.TryAdd(place, true)) return;
        try
        {
            while (await parts.Store.UnsaidAsync(place, 1, ct) is [var word])
            {
                if (!await live.TellAsync(CardDrawing.Single([word.Card], [], null, null, AllowedMentions.None), ct)) return;
                await parts.Store.MarkSaidAsync(word.Id, ct);
            }
        }
        finally
        {
            telling.TryRemove(place, out _);
        }
    }

    private bool IsResting(string place) => refused.ContainsKey(place) || resting.TryGetValue(place, out var since) && parts.Clock.GetUtcNow() - since < Rest;

    /// <returns>What stood in the way, or null.</returns>
    private async Task<Trouble?> TryAsync(MemberId member, string place, CancellationToken ct)
    {
        try
        {
            while (await parts.Store.UnsaidAsync(place, 1, ct) is [var word])
            {
                if (!await SayAsync(Names.Person(member), place, word, unsure.ContainsKey(place), ct)) return null;
                await parts.Store.MarkSaidAsync(word.Id, ct);
                unsure.TryRemove(place, out _);
            }

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

    /// <returns>False when it has to wait.</returns>
    private async Task<bool> SayAsync(Snowflake person, string place, OutboxMessage word, bool doubt, CancellationToken ct)
    {
        try
        {
            if (await direct.OpenAsync(person, ct) is not { } channel) return false;
            var mark = Names.Mark(word.Id);
            if (doubt && await panels.FindAsync(channel, mark, ct) is not null) return true;
            var drawn = CardDrawing.Single([word.Card], [], mark, null, AllowedMentions.None);
            await parts.Rest.PostMessageAsync(channel, drawn.Body with { Nonce = Names.Nonce(word.Id), EnforceNonce = true }, [], ct);
        }
        catch (DiscordException e) when (ReminderDelivery.IsRefusal(e))
        {
            direct.Forget(person);
            parts.Log.WordRefused(e.Code);
            refused[place] = true;
            return parts.Clock.GetUtcNow() - word.DecidedAt > TooOld;
        }

        return true;
    }
}
