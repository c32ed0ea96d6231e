using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Coaching.Keeping;

/// <summary>Where clubs' own rules are kept, how they came about, and what was done to them. Everything acknowledged survives the death of the process. Nothing of one club is ever found by another's id.</summary>
public interface ITeachingStore
{
    /// <summary>The number of the newest edition; 0 when there is none. Asked before every turn, so it must be quick.</summary>
    Task<int> NewestEditionAsync(ClubId club, CancellationToken ct);

    Task<RulesEdition?> FindEditionAsync(ClubId club, int number, CancellationToken ct);

    /// <summary>Newest first.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<EditionHead>> EditionsAsync(ClubId club, int limit, CancellationToken ct);

    /// <summary>As they were chosen, or <see cref="TeachingSettings.New"/>.</summary>
    Task<TeachingSettings> TeachingSettingsAsync(ClubId club, CancellationToken ct);

    Task<Proposal?> FindProposalAsync(ClubId club, string id, CancellationToken ct);

    /// <summary>Last changed first.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<Proposal>> ProposalsAsync(ClubId club, ProposalState state, int limit, CancellationToken ct);

    Task<Tip?> FindTipAsync(ClubId club, string id, CancellationToken ct);

    /// <summary>Oldest first.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<Tip>> TipsAsync(ClubId club, TipState state, int limit, CancellationToken ct);

    /// <summary>What was done, newest first.</summary>
    /// <param name="before">Only entries of a lower number; <see cref="long.MaxValue"/> for all.</param>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<AuditEntry>> AuditAsync(ClubId club, long before, int limit, CancellationToken ct);

    /// <summary>Keeps all that one act changes as a whole or not at all, and returns once it is safe on the disk.</summary>
    /// <exception cref="ArgumentException">Something in it is of another club, or somebody who did it is none of its members.</exception>
    /// <exception cref="StaleSaveException">Somebody saved one of them since it was read, or published the edition's number first; read again and decide again.</exception>
    Task SaveTeachingAsync(TeachingSaved saved, CancellationToken ct);

    /// <summary>The club's closed cases with how they ended, last closed first; each with the bike as it is by now.</summary>
    /// <param name="limit">1 to 20,000.</param>
    Task<ImmutableArray<ClosedCase>> ClosedCasesAsync(ClubId club, int limit, CancellationToken ct);

    /// <summary>Words of the club's members that were not understood, newest first. A bounded number is kept for each club.</summary>
    /// <param name="limit">1 to 2,000.</param>
    Task<ImmutableArray<UnheardWords>> UnheardAsync(ClubId club, int limit, CancellationToken ct);

    /// <summary>Keeps words that were not understood outside of any case, and returns once they are safe on the disk. Those of a case are kept with its turn.</summary>
    /// <exception cref="ArgumentException">There are no words, or too many.</exception>
    Task AddUnheardAsync(UnheardWords words, CancellationToken ct);

    /// <summary>Drops words that need not be looked at any more, however many members said them.</summary>
    Task DropUnheardAsync(ClubId club, string words, CancellationToken ct);

    /// <summary>What is noted of the club's learning, or <see cref="LearningBook.New"/>. Taking a member's closed cases out notes that what was learnt is to be counted anew.</summary>
    Task<LearningBook> LearningBookAsync(ClubId club, CancellationToken ct);

    /// <summary>Which cases of the club are closed and were so by then. Quick: no case is read.</summary>
    /// <param name="until">Cases that were closed at that very moment count.</param>
    Task<ClosedMark> ClosedMarkAsync(ClubId club, DateTimeOffset until, CancellationToken ct);
}

/// <summary>All that one act on a club's rules changes. All of it is of the one club.</summary>
/// <param name="Proposal">The proposal after; its version is one above the version that was read.</param>
/// <param name="Tip">The tip after; likewise.</param>
/// <param name="Settings">The settings after; likewise.</param>
/// <param name="Edition">The next edition; its number is one above the newest that was read.</param>
/// <param name="Audit">At least one, unless nothing but the notes of learning changes; numbered by the store.</param>
/// <param name="Say">What to say to members, each in their <see cref="TeachingPlace"/>.</param>
/// <param name="Book">What is noted of the club's learning after; its version is one above the version that was read.</param>
public sealed record TeachingSaved(
    ClubId Club,
    Proposal? Proposal,
    Tip? Tip,
    TeachingSettings? Settings,
    RulesEdition? Edition,
    ImmutableArray<AuditEntry> Audit,
    ImmutableArray<OutboxMessage> Say,
    LearningBook? Book = null);
