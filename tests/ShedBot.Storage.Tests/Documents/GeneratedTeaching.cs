using System.Collections.Immutable;
using CsCheck;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>Whatever can be stored of a club's rules.</summary>
internal static class GeneratedTeaching
{
    private static readonly Gen<ClubId> Club = Generated.Key.Select(k => new ClubId(k.Replace(ClubId.Between, '-')));

    private static readonly Gen<string?> TextOrNull = Gen.OneOf(Generated.Text.Select(t => (string?)t), Gen.Const((string?)null));

    public static readonly Gen<RulesEdition> Edition =
        from club in Club
        from publisher in Gen.OneOf(Generated.Key.Select(k => (MemberId?)club.Member(k)), Gen.Const((MemberId?)null))
        from number in Gen.Int[1, int.MaxValue]
        from texts in Gen.Select(Generated.Text, Generated.Text, Generated.Text, Generated.Text, Generated.Text)
        from proposal in TextOrNull
        from at in Generated.Time
        select new RulesEdition(club, number, texts.Item1, texts.Item2, texts.Item3, proposal, publisher, texts.Item4, texts.Item5, at);

    private static readonly Gen<ProposalTrial?> Trial = Gen.OneOf(
        Gen.Const((ProposalTrial?)null),
        Gen.Select(Generated.Text, Gen.Int, Generated.Text, Generated.Text, Gen.Bool, Generated.Time, (c, e, b, r, s, at) => (ProposalTrial?)new ProposalTrial(c, e, b, r, s, at)));

    public static readonly Gen<Proposal> Proposal =
        from club in Club
        from ids in Gen.Select(Generated.Key, Gen.OneOf(Generated.Key.Select(club.Member), Gen.Const(default(MemberId))))
        from state in Gen.Enum<ProposalState>()
        from answers in Gen.Select(Generated.Text, Generated.List(Generated.Text)).Array[0, 4]
        from texts in Gen.Select(Generated.Text, Generated.Text, Generated.Text, Generated.Text, Generated.Text, Generated.Text)
        from tip in TextOrNull
        from trial in Trial
        from numbers in Gen.Select(Gen.Int, Gen.Int[1, int.MaxValue])
        from times in Gen.Select(Generated.Time, Generated.Time)
        select new Proposal(
            ids.Item1, club, ids.Item2, texts.Item1, state, texts.Item2,
            answers.DistinctBy(a => a.Item1).ToImmutableSortedDictionary(a => a.Item1, a => a.Item2, StringComparer.Ordinal),
            texts.Item3, texts.Item4, texts.Item5, tip, trial, texts.Item6, numbers.Item1, times.Item1, times.Item2, numbers.Item2);

    public static readonly Gen<Tip> Tip =
        from club in Club
        from keys in Gen.Select(Generated.Key, Generated.Key, Generated.Key)
        from state in Gen.Enum<TipState>()
        from texts in Gen.Select(Generated.Text, Generated.Text, Generated.Text, TextOrNull, Generated.Text)
        from at in Generated.Time
        from version in Gen.Int[1, int.MaxValue]
        select new Tip(
            keys.Item1, club, club.Member(keys.Item2), texts.Item1, club.Member(keys.Item3), texts.Item2, texts.Item3, state, texts.Item4, texts.Item5, at, version);

    private static readonly Gen<ImmutableSortedSet<string>> Roles = Generated.Text.Array[0, 4].Select(a => a.ToImmutableSortedSet(StringComparer.Ordinal));

    public static readonly Gen<TeachingSettings> Settings =
        Gen.Select(Club, Roles, Roles, Gen.Bool, Gen.Enum<LearningMode>(), Generated.Real, Generated.Real, Gen.Select(Roles, Gen.Int[1, int.MaxValue])).Select(
            (club, propose, publish, two, mode, factor, share, last) => new TeachingSettings(club, propose, publish, two, mode, factor, share, last.Item1, last.Item2));

    public static readonly Gen<LearningBook> Book =
        from club in Club
        from looked in Gen.OneOf(Generated.Time.Select(t => (DateTimeOffset?)t), Gen.Const((DateTimeOffset?)null))
        from texts in Gen.Select(Generated.Text, Generated.Text)
        from numbers in Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[0, int.MaxValue], Gen.Int[1, int.MaxValue])
        select new LearningBook(club, looked, texts.Item1, texts.Item2, numbers.Item1, numbers.Item2, numbers.Item3);

    public static readonly Gen<AuditEntry> Audit =
        from club in Club
        from number in Gen.Long[1, long.MaxValue]
        from who in Gen.OneOf(Generated.Key.Select(k => (MemberId?)club.Member(k)), Gen.Const((MemberId?)null))
        from texts in Gen.Select(Generated.Text, Generated.Text, Generated.Text)
        from act in Gen.Enum<AuditAct>()
        from at in Generated.Time
        select new AuditEntry(club, number, who, texts.Item1, act, texts.Item2, texts.Item3, at);

    public static readonly Gen<UnheardWords> Unheard =
        Gen.Select(Generated.Key, Generated.Text, Generated.Text, Generated.Time, (member, words, expected, at) => new UnheardWords(new MemberId(member), words, expected, at));
}
