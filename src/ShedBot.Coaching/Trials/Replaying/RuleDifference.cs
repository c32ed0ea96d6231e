using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>
/// What of the rules a belief can depend on, and where old and new differ in it, to the last digit. A case that meets none of it is believed exactly
/// alike under both, and need not be worked out.
/// </summary>
/// <remarks>
/// A belief follows from the faults and their chances, the facts that move them, and for each piece of evidence the finding with all its links, the error of
/// the check, or what the repair mends; a complaint that is named also from how many complaints there are. Costs, covers and words move no belief.
/// Chances are compared as compiled, so that what one fault's word does to all others through the common scale is seen here.
/// </remarks>
/// <param name="Everywhere">True when the faults or any of their chances differ: then every case is touched.</param>
/// <param name="Named">True when the number of complaints differs.</param>
internal sealed record RuleDifference(
    bool Everywhere,
    bool Named,
    ImmutableHashSet<string> Findings,
    ImmutableHashSet<string> Checks,
    ImmutableHashSet<string> Repairs,
    ImmutableHashSet<string> Facts)
{
    public static RuleDifference Of(RulesPair rules)
    {
        var (old, @new) = (rules.Old, rules.New);
        return new RuleDifference(
            !old.Model.Faults.SequenceEqual(@new.Model.Faults),
            old.Complaints.Count != @new.Complaints.Count,
            Differing(Seen(old), Seen(@new), Same),
            Differing(Asked(old), Asked(@new), (a, b) => a == b),
            Differing(Mends(old), Mends(@new), (a, b) => a.SequenceEqual(b)),
            [.. Differing(old.Facts, @new.Facts, Same), .. Moves(old).Except(Moves(@new)).Concat(Moves(@new).Except(Moves(old))).Select(m => m.Move.Fact)]);
    }

    public bool Touches(ClosedCase closed) => Everywhere
        || closed.Case.Standing.Any(Touches)
        || (closed.Bike is { } bike && Facts.Any(bike.Facts.ContainsKey));

    private bool Touches(CaseEntry entry) => entry.Kind switch
    {
        EntryKind.Complaint => Named || Findings.Contains(entry.Subject),
        EntryKind.Denied or EntryKind.Volunteered => Findings.Contains(entry.Subject),
        EntryKind.Answer => Checks.Contains(entry.Subject),
        EntryKind.RepairFailed or EntryKind.RepairBetter or EntryKind.CameBack => Repairs.Contains(entry.Subject),
        EntryKind.Fact => Facts.Contains(entry.Subject),
        _ => false,
    };

    private static Dictionary<string, (Finding Finding, bool Told)> Seen(KnowledgeBase knowledge) =>
        knowledge.Model.Findings.ToDictionary(f => f.Id, f => (f, knowledge.Complaints.ContainsKey(f.Id)), StringComparer.Ordinal);

    /// <summary>A check as evidence: its error, and the finding that it tells with all that shows as it.</summary>
    private static Dictionary<string, CheckAsEvidence> Asked(KnowledgeBase knowledge) => knowledge.Model.Checks.ToDictionary(
        c => c.Id, c => new CheckAsEvidence(c.Error, knowledge.Model.Findings[knowledge.Model.FindingAt(c.Finding)]), StringComparer.Ordinal);

    private static Dictionary<string, ImmutableArray<Fix>> Mends(KnowledgeBase knowledge) =>
        knowledge.Model.Repairs.ToDictionary(r => r.Id, r => r.Fixes, StringComparer.Ordinal);

    private static IEnumerable<(string Fault, ProfileCondition Move)> Moves(KnowledgeBase knowledge) =>
        knowledge.Faults.Values.SelectMany(f => f.MovedBy.Select(m => (f.Id, m)));

    private static bool Same((Finding Finding, bool Told) a, (Finding Finding, bool Told) b) => a.Told == b.Told && Same(a.Finding, b.Finding);

    private static bool Same(FactRule a, FactRule b) => a.KeepsForDays == b.KeepsForDays && a.Values.Select(v => v.Id).SequenceEqual(b.Values.Select(v => v.Id));

    private static bool Same(Finding a, Finding b) => a.Id == b.Id && a.States.SequenceEqual(b.States) && a.Leak.SequenceEqual(b.Leak)
        && a.Links.Length == b.Links.Length && a.Links.Zip(b.Links).All(p => p.First.Fault == p.Second.Fault && p.First.Net.SequenceEqual(p.Second.Net));

    private static ImmutableHashSet<string> Differing<T>(IReadOnlyDictionary<string, T> old, IReadOnlyDictionary<string, T> @new, Func<T, T, bool> same) =>
    [
        .. old.Keys.Where(k => !@new.TryGetValue(k, out var other) || !same(old[k], other)),
        .. @new.Keys.Where(k => !old.ContainsKey(k)),
    ];

    private readonly record struct CheckAsEvidence(AnswerError Error, Finding Finding)
    {
        public bool Equals(CheckAsEvidence other) => Error == other.Error && Same(Finding, other.Finding);

        public override int GetHashCode() => Error.GetHashCode();
    }
}
