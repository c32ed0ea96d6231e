using System.Collections.Immutable;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Thinking;

/// <summary>Taking back: a line that was struck stays for the record and no longer counts.</summary>
internal static class Striking
{
    public static bool MayGoBackTo(CaseEntry entry) => entry.Kind is EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot
        or EntryKind.Fact or EntryKind.FactUnknown or EntryKind.Ready or EntryKind.NotReady or EntryKind.RepairRefused
        || entry is { Kind: EntryKind.Either, Value: not null };

    /// <summary>Strikes what the last answer wrote: everything from its turn on.</summary>
    /// <returns>The entries after, and the line that was taken back; null when there is nothing to go back to.</returns>
    public static (ImmutableArray<CaseEntry> Entries, CaseEntry? TakenBack) Last(ImmutableArray<CaseEntry> entries)
    {
        var last = entries.LastOrDefault(e => !e.Struck && MayGoBackTo(e));
        return last is null
            ? (entries, null)
            : ([.. entries.Select(e => e.Turn >= last.Turn && !IsRepairResult(e) ? e with { Struck = true } : e)], last);
    }

    /// <summary>Strikes every standing line that fits.</summary>
    public static ImmutableArray<CaseEntry> Where(ImmutableArray<CaseEntry> entries, Func<CaseEntry, bool> fits) =>
        [.. entries.Select(e => !e.Struck && fits(e) ? e with { Struck = true } : e)];

    private static bool IsRepairResult(CaseEntry entry) => entry.Kind is EntryKind.RepairFailed or EntryKind.RepairBetter
        or EntryKind.RepairHeld or EntryKind.CameBack;
}
