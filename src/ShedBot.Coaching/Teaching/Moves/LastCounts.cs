using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>Keeps what was counted last, so that a look and the proposal made of it are one count.</summary>
internal sealed class LastCounts(ITeachingStore store)
{
    private const int MostKept = 16;

    /// <summary>Cases fade slowly; within this nobody could tell.</summary>
    private static readonly TimeSpan Fresh = TimeSpan.FromMinutes(30);

    private readonly ConcurrentDictionary<ClubId, (CountWork Work, LearningReport Report)> kept = new();

    /// <returns>What was counted, with the work as of when it was.</returns>
    public async Task<(CountWork Work, LearningReport Report)> OfAsync(ClubId club, CountWork work, CancellationToken ct)
    {
        if (kept.TryGetValue(club, out var last) && await IsSameAsync(club, last.Work.Basis, work.Basis, ct)) return last;
        var report = await work.CountAsync(ct);
        if (kept.Count >= MostKept) kept.Clear();
        return kept[club] = (work, report);
    }

    private async Task<bool> IsSameAsync(ClubId club, CountBasis last, CountBasis now, CancellationToken ct)
    {
        if ((now.Until - last.Until).Duration() > Fresh || last with { Until = now.Until } != now) return false;
        // No case has come to count in the meantime either.
        var wait = LearningLimits.Default.WaitDays;
        return (await store.ClosedMarkAsync(club, last.Until.AddDays(-wait), ct)).Of == (await store.ClosedMarkAsync(club, now.Until.AddDays(-wait), ct)).Of;
    }
}
