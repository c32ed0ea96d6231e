using System.Collections.Immutable;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Nudging;

/// <summary>What looking at everybody whose time had come came to.</summary>
/// <param name="Told">Members for whom a message waits now.</param>
/// <param name="Failed">Members who could not be looked at, and why; they are looked at again in the next round.</param>
public sealed record ReminderRound(ImmutableArray<MemberId> Told, ImmutableArray<(MemberId Member, Exception Why)> Failed);
