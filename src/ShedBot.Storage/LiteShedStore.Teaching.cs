using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Reading;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage;

/// <content>Clubs' own rules and how they came about, beside the cases in the same file.</content>
public sealed partial class LiteShedStore
{
    public Task<int> NewestEditionAsync(ClubId club, CancellationToken ct) => readers.ReadAsync(d => TeachingLookups.NewestEdition(d, club), ct);

    public Task<RulesEdition?> FindEditionAsync(ClubId club, int number, CancellationToken ct) =>
        readers.ReadAsync(d => TeachingLookups.Edition(d, club, number), ct);

    public Task<ImmutableArray<EditionHead>> EditionsAsync(ClubId club, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => TeachingLookups.Editions(d, club, limit), ct);
    }

    public Task<TeachingSettings> TeachingSettingsAsync(ClubId club, CancellationToken ct) => readers.ReadAsync(d => TeachingLookups.Settings(d, club), ct);

    public Task<Proposal?> FindProposalAsync(ClubId club, string id, CancellationToken ct) => readers.ReadAsync(d => TeachingLookups.Proposal(d, club, id), ct);

    public Task<ImmutableArray<Proposal>> ProposalsAsync(ClubId club, ProposalState state, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => TeachingLookups.Proposals(d, club, state, limit), ct);
    }

    public Task<Tip?> FindTipAsync(ClubId club, string id, CancellationToken ct) => readers.ReadAsync(d => TeachingLookups.Tip(d, club, id), ct);

    public Task<ImmutableArray<Tip>> TipsAsync(ClubId club, TipState state, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => TeachingLookups.Tips(d, club, state, limit), ct);
    }

    public Task<ImmutableArray<AuditEntry>> AuditAsync(ClubId club, long before, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => TeachingLookups.Audit(d, club, before, limit), ct);
    }

    /// <inheritdoc/>
    /// <remarks>The very same act may be saved again, for when it is not known whether the first try landed, unless it leaves nothing but its line of
    /// audit: that is then written twice.</remarks>
    /// <exception cref="ArgumentException">The act does not hang together, is not all of one club, or holds a text above a mebibyte.</exception>
    public Task SaveTeachingAsync(TeachingSaved saved, CancellationToken ct)
    {
        var documents = TeachingDocuments.Of(saved);
        return writer.DoAsync(d => teaching.Write(d, documents), alone: false, ct);
    }

    public Task<ImmutableArray<ClosedCase>> ClosedCasesAsync(ClubId club, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 20_000);
        return readers.ReadAsync(d => ClosedCases.Of(d, club, limit), ct);
    }

    public Task<ImmutableArray<UnheardWords>> UnheardAsync(ClubId club, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, UnheardWriter.MostOfAClub);
        return readers.ReadAsync(d => TeachingLookups.Unheard(d, club, limit), ct);
    }

    public Task AddUnheardAsync(UnheardWords words, CancellationToken ct)
    {
        if (!TurnDocuments.IsKept(words, ClubId.Serving(words.Member)))
        {
            throw new ArgumentException("Words that were not understood must be there, and not too many.", nameof(words));
        }

        return writer.DoAsync(d => UnheardWriter.Add(d, words), alone: false, ct);
    }

    public Task DropUnheardAsync(ClubId club, string words, CancellationToken ct) =>
        writer.DoAsync(d => UnheardWriter.Drop(d, club, words), alone: false, ct);
}
