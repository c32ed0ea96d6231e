using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching;

/// <summary>What came of an act.</summary>
/// <param name="Card">What to show to whoever acted; of a refusal, why.</param>
/// <param name="Refused">Set when nothing was done. Its code is stable: <c>rights</c>, <c>gone</c>, <c>stale</c>, <c>two-people</c>, <c>trial</c>, <c>unsafe</c>, and others.</param>
/// <param name="Proposal">The proposal after, when the act was about one.</param>
/// <param name="Sheet">The sheet that is being written, when the next thing to do is to answer it.</param>
/// <param name="Question">The question that is open; null when the sheet is full.</param>
/// <param name="Files">To be handed out.</param>
/// <param name="Edition">The edition that was published by this act; null when none was.</param>
public sealed record TeachAnswer(
    Card Card, Refusal? Refused = null, Proposal? Proposal = null, SheetState? Sheet = null, Question? Question = null, ImmutableArray<CopyFile> Files = default, int? Edition = null)
{
    /// <summary>To be painted beside the card where the place can; null for nothing.</summary>
    public CalibrationPicture? Picture { get; init; }

    internal static TeachAnswer No(string code, string say) => new(new Card("Not done", [new TextBlock(say)], []), new Refusal(code, say));
}
