using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage;

/// <content>What is noted of how clubs' rules learn.</content>
public sealed partial class LiteShedStore
{
    public Task<LearningBook> LearningBookAsync(ClubId club, CancellationToken ct) => readers.ReadAsync(d => TeachingLookups.LearningBook(d, club), ct);

    public Task<ClosedMark> ClosedMarkAsync(ClubId club, DateTimeOffset until, CancellationToken ct) => readers.ReadAsync(d => ClosedCases.Mark(d, club, until), ct);
}
