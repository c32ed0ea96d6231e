using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Keeping;

/// <summary>Where cases, bikes, outcomes and what is still to be said are kept. Everything acknowledged survives the death of the process.</summary>
public interface IShedStore : IAsyncDisposable
{
    Task<Case?> FindCaseAsync(CaseId id, CancellationToken ct);

    /// <summary>The member's case in this place that was last touched and is not closed, or null.</summary>
    Task<Case?> FindOpenCaseAsync(MemberId member, string place, CancellationToken ct);

    /// <summary>The member's case in this place that was last touched, closed or not, or null.</summary>
    Task<Case?> FindLastCaseAsync(MemberId member, string place, CancellationToken ct);

    /// <summary>The member's cases, last touched first.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<Case>> CasesOfAsync(MemberId member, int limit, CancellationToken ct);

    Task<BikeProfile?> FindBikeAsync(BikeId id, CancellationToken ct);

    Task<ImmutableArray<BikeProfile>> BikesOfAsync(MemberId member, CancellationToken ct);

    /// <summary>Keeps one turn as a whole or not at all, and returns once it is safe on the disk.</summary>
    /// <exception cref="StaleSaveException">Somebody saved the case or bike since it was read; read again and take the turn again.</exception>
    Task SaveAsync(TurnSaved turn, CancellationToken ct);

    /// <summary>Keeps a bike that changed outside a case, and returns once it is safe on the disk.</summary>
    /// <param name="bike">The bike after; its version is one above the version that was read.</param>
    /// <exception cref="StaleSaveException">Somebody saved the bike since it was read; read again and make the entry again.</exception>
    Task SaveBikeAsync(BikeProfile bike, CancellationToken ct);

    /// <summary>Removes a bike for good and keeps its owner without it, as a whole or not at all, and returns once it is safe on the disk. Cases about it stay.</summary>
    /// <param name="owner">The member after; the version is one above the version that was read.</param>
    /// <param name="bike">The bike as it was read.</param>
    /// <exception cref="StaleSaveException">Somebody saved the owner or the bike since it was read, or removed it; read again and decide again.</exception>
    Task RemoveBikeAsync(Rider owner, BikeProfile bike, CancellationToken ct);

    /// <summary>What was decided to be said in a place and not yet marked as said, in the order it was decided.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<OutboxMessage>> UnsaidAsync(string place, int limit, CancellationToken ct);

    Task MarkSaidAsync(string outboxId, CancellationToken ct);

    /// <summary>Outcomes of closed cases, oldest first.</summary>
    /// <param name="limit">1 to 10,000.</param>
    Task<ImmutableArray<Outcome>> OutcomesAsync(int limit, CancellationToken ct);
}

/// <summary>All that one turn changes.</summary>
/// <param name="Case">The case after; its version is one above the version that was read.</param>
/// <param name="Bike">The bike after, or null when it did not change; its version is one above the version that was read.</param>
/// <param name="Outcome">Set when the turn closed the case.</param>
/// <param name="Say">What to say, in order.</param>
/// <param name="Owner">The member's wishes after, when the turn brings forward when they are looked at; else null.</param>
/// <param name="Unheard">Words of the turn that nothing could be made of; null when there were none.</param>
public sealed record TurnSaved(Case Case, BikeProfile? Bike, Outcome? Outcome, ImmutableArray<OutboxMessage> Say, Rider? Owner = null, UnheardWords? Unheard = null);

/// <summary>Something that was decided to be said. Kept with the turn that decided it, so that a crash neither loses nor doubles it.</summary>
/// <param name="Id">Case, turn and number: the same turn taken twice gives the same id. Serves as the nonce.</param>
/// <param name="Answers">The platform's name of the event that it answers; empty when that was not written down.</param>
public sealed record OutboxMessage(string Id, CaseId Case, string Place, Card Card, DateTimeOffset DecidedAt, string Answers = "");

/// <summary>How a case ended; what later learning counts.</summary>
/// <param name="Phase">Solved, HandedOver, Stopped or Left.</param>
/// <param name="Repair">The repair that held, or null.</param>
/// <param name="Causes">The causes that the repair mended, with P(present) before it; empty unless solved.</param>
public sealed record Outcome(
    CaseId Case, CasePhase Phase, string? Repair, ImmutableArray<OutcomeCause> Causes, int Asked, string KnowledgeVersion, DateTimeOffset At);

public sealed record OutcomeCause(string Fault, double Chance);

/// <summary>The record was saved by somebody else since it was read.</summary>
public sealed class StaleSaveException(string what) : Exception($"{what} was saved by somebody else since it was read.");
