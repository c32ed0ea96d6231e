using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>All that a count needs, read at one moment. Counting takes seconds where there are many cases, so it is done when nobody waits behind it.</summary>
/// <param name="Unlearnt">The club's rules without anything learnt.</param>
/// <param name="Now">What the club has learnt so far.</param>
internal sealed record CountWork(RulesNow Rules, KnowledgeBase Unlearnt, Learnt Now, ImmutableArray<ClosedCase> Cases, LearningLimits Limits, CountBasis Basis)
{
    private const int MostCases = 20_000;

    public static async Task<CountWork> ReadAsync(ITeachingStore store, RulesNow rules, ClubId club, DateTimeOffset at, CancellationToken ct)
    {
        var settings = await store.TeachingSettingsAsync(club, ct);
        // The mark first: a case that changes between the two makes the count stale and not wrong.
        var basis = await CountBasis.OfAsync(store, rules, settings, at, ct);
        var now = LearntText.Read(rules.Learnt).Learnt ?? Learnt.Nothing;
        var unlearnt = now.IsNothing ? rules.Knowledge : LayeredRules.LoadKept(rules.Base, rules.Layer).Knowledge!;
        return new CountWork(rules, unlearnt, now, await store.ClosedCasesAsync(club, MostCases, ct), LearningLimits.Of(settings), basis);
    }

    public Task<LearningReport> CountAsync(CancellationToken ct) => Task.Run(() => Learner.Learn(Unlearnt, Cases, Limits, Basis.Until), ct);

    /// <param name="approved">What the club has taken over: nothing else is looked at.</param>
    public Task<LearningReport> CountAnewAsync(Learnt approved, CancellationToken ct) => Task.Run(() => Learner.CountAnew(Unlearnt, approved, Cases, Limits, Basis.Until), ct);
}
