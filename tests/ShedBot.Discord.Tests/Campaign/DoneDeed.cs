using ShedBot.DiscordStandIn.Driving;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>Something a rider did that may be a turn.</summary>
/// <param name="Event">As it is named in what is kept; see <c>Names</c>.</param>
/// <param name="Deed">Null for words: those are never refused, so they must count.</param>
internal sealed record DoneDeed(string What, string Event, Deed? Deed)
{
    private const int Announced = 6, Changed = 7;

    private static readonly string[] Promises = ["Kept, and soon said", "We go on there", "This case is closed"];

    /// <summary>Whether the rider was shown that it counts: by the panel changing under the finger, or in so many words.</summary>
    public async Task<bool> MustCountAsync()
    {
        if (Deed is null) return true;
        var first = await Deed.Answered;
        if (first.Failed) return false;
        if (first.Type == Changed) return true;
        var words = Deed.FollowUps.Select(m => m.Words);
        if (Deed.Settled.IsCompleted && (await Deed.Settled).Message is { Private: true } told) words = words.Append(told.Words);
        // "This case is closed" on a press only says that it came too late.
        return words.Any(w => Promises.Take(What == Rider.LeaveCommand ? 3 : 2).Any(p => w.Contains(p, StringComparison.Ordinal)));
    }

    /// <summary>Whether it was announced and then nothing more was shown for it.</summary>
    public async Task<bool> WasOnlyAnnouncedAsync() => Deed is not null && (await Deed.Answered).Type == Announced && Deed.FollowUps.Count == 0;
}
