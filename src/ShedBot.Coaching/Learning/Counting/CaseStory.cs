using System.Collections.Immutable;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>A closed case as what it says of the machine, in the terms of the rules that are learnt for.</summary>
/// <param name="At">When it was closed.</param>
/// <param name="Mended">True when it was mended, proved, and has not come back.</param>
/// <param name="Complaints">What the rider came with; never empty.</param>
/// <param name="Hints">What else was said with it, unasked. Riders volunteer what strikes them, so like the complaints it is where counting starts from, and is not counted.</param>
/// <param name="Stretches">What was answered before the first trial of a repair, after it, and so on; one more than there are trials.</param>
internal sealed record CaseStory(
    CaseId Case,
    MemberId Member,
    DateTimeOffset At,
    bool Mended,
    ImmutableSortedDictionary<string, string> Facts,
    ImmutableArray<ToldComplaint> Complaints,
    ImmutableArray<SaidOf> Hints,
    ImmutableArray<ImmutableArray<SaidOf>> Stretches,
    ImmutableArray<TrialTold> Trials)
{
    /// <summary>Stories with the same opening start from the same chances.</summary>
    public string Opening => string.Join(
        '|',
        string.Join(',', Facts.Select(f => $"{f.Key}={f.Value}")),
        string.Join(',', Complaints.Select(c => FormattableString.Invariant($"{c.Finding}:{c.Unmeant:R}:{c.Missed:R}"))),
        string.Join(',', Hints.Select(h => FormattableString.Invariant($"{h.Finding}:{string.Join('/', h.Weights)}"))));
}

/// <summary>A complaint that was told.</summary>
/// <param name="Finding">Index of the complaint among the model's findings.</param>
/// <param name="Unmeant">P(told | the machine does not do it).</param>
/// <param name="Missed">P(another is told | the machine does it).</param>
internal sealed record ToldComplaint(int Finding, double Unmeant, double Missed);

/// <summary>All that was said of one finding in one stretch.</summary>
/// <param name="Weights">By true state: P(what was said | it), up to a factor.</param>
internal sealed record SaidOf(int Finding, ImmutableArray<double> Weights)
{
    public double[] Raw => [.. Weights];
}

/// <param name="Repair">The id of the repair that was tried.</param>
internal sealed record TrialTold(string Repair, TrialSaid Said);

internal enum TrialSaid
{
    Held,
    Better,
    NoChange,

    /// <summary>It held for a while.</summary>
    CameBack,
}
