using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What is noted of a club's learning beside its choices. Kept with whatever act changes it, so that nothing is learnt twice and no wish is lost.</summary>
/// <param name="LookedAt">When the cases were last looked over without anybody asking; null for never, or when they are to be looked over at once.</param>
/// <param name="Looked">A mark of the cases and choices that were looked over then; empty for none.</param>
/// <param name="Anew">
/// What is still to be counted anew, as <see cref="Knowledge.Compiling.LearntText"/>: a member's cases were taken out, or an older edition was taken back that had counted such; empty for nothing.
/// </param>
/// <param name="Forgotten">The newest edition when a member's cases were last taken out: whatever it and older ones have learnt may have counted them. 0 for never.</param>
/// <param name="QuietUntil">So many cases must be closed before anything is put up by itself, because moderators took back or turned down what was; 0 for any.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record LearningBook(ClubId Club, DateTimeOffset? LookedAt, string Looked, string Anew, int Forgotten, int QuietUntil, int Version)
{
    /// <summary>What was taken back is left alone until so many more cases have been closed, and a quarter more than there were.</summary>
    private const int LeastMore = 8, PartMore = 4;

    public static LearningBook New(ClubId club) => new(club, null, "", "", 0, 0, 0);

    /// <summary>Leaves moderators alone for a while.</summary>
    /// <param name="closed">How many cases are closed now.</param>
    public LearningBook Quiet(int closed) => this with { QuietUntil = closed + Math.Max(LeastMore, closed / PartMore) };

    public LearningBook Next() => this with { Version = Version + 1 };
}

/// <summary>Exactly which cases were closed up to some time, without reading them.</summary>
/// <param name="Of">A short name of exactly these cases with the times at which they were closed.</param>
public sealed record ClosedMark(int Count, string Of);
