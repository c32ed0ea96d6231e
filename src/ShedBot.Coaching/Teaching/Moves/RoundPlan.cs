using System.Collections.Immutable;
using System.Globalization;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What a round over a club's cases has to do.</summary>
internal enum RoundKind
{
    /// <summary>Nothing that it has not seen.</summary>
    None,

    /// <summary>Look whether something new is to be learnt.</summary>
    Look,

    /// <summary>Count again what was taken over, because cases are gone.</summary>
    CountAnew,
}

/// <summary>What comes of what a round has counted.</summary>
internal enum RoundStep
{
    /// <summary>Nothing is worth an act.</summary>
    Nothing,

    /// <summary>An open proposal of ShedBot's says nothing new any more.</summary>
    Withdraw,

    /// <summary>An open proposal of ShedBot's says the same already.</summary>
    Keep,

    /// <summary>A proposal, in place of ShedBot's open one.</summary>
    Propose,

    /// <summary>Tried, and published where it does no harm.</summary>
    Publish,
}

/// <summary>When ShedBot looks over a club's cases by itself, and what it does then. Pure.</summary>
internal static class RoundPlan
{
    /// <summary>A club's cases are looked over so often at most, unless it has chosen anew.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromDays(1);

    /// <param name="closed">How many cases are closed, those among them that do not count yet.</param>
    /// <param name="ripe">The cases that count by now, see <see cref="Learning.LearningLimits.WaitDays"/>.</param>
    public static RoundKind Of(TeachingSettings settings, LearningBook book, int closed, ClosedMark ripe, DateTimeOffset now) =>
        book.Anew.Length > 0 ? RoundKind.CountAnew
        : settings.Learning == LearningMode.Off || ripe.Count == 0 || closed < book.QuietUntil || book.Looked == Looked(settings, ripe) ? RoundKind.None
        // A clock that was set back must not keep a club waiting.
        : book.LookedAt is { } at && (now - at).Duration() < Pause && book.Looked.StartsWith(Choices(settings), StringComparison.Ordinal) ? RoundKind.None
        : RoundKind.Look;

    /// <summary>A short name of what is looked over: the club's choices, then the cases.</summary>
    public static string Looked(TeachingSettings settings, ClosedMark ripe) => $"{Choices(settings)} {ripe.Of}";

    /// <param name="steps">What differs from what the club has learnt.</param>
    /// <param name="open">What ShedBot's open proposal has counted; null when there is none, or when it is stale.</param>
    /// <param name="isOpen">Whether there is one, stale or not.</param>
    /// <param name="sinceOpen">What differs from the open proposal.</param>
    public static RoundStep Of(LearningMode mode, ImmutableArray<LearntStep> steps, bool isOpen, CountedNumbers? open, ImmutableArray<LearntStep> sinceOpen) =>
        !steps.Any(s => s.IsClear) ? isOpen ? RoundStep.Withdraw : RoundStep.Nothing
        : open is not null && !sinceOpen.Any(s => s.IsClear) && (mode != LearningMode.Automatic || open.Why.Length > 0) ? RoundStep.Keep
        : mode == LearningMode.Automatic ? RoundStep.Publish
        : RoundStep.Propose;

    private static string Choices(TeachingSettings settings) => string.Create(CultureInfo.InvariantCulture, $"{settings.Learning} {CountBasis.LimitsMark(settings)}");
}
