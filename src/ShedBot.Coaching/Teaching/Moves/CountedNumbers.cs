using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What a proposal that was counted rests on, with the numbers in words. Kept as the answers of a proposal that has no sheet.</summary>
/// <param name="Counted">All that the count would have the club learn.</param>
/// <param name="Numbers">What would move, the largest first, each with a sentence for moderators.</param>
/// <param name="Out">Keys that are left as they are.</param>
/// <param name="Cases">How many cases were looked at.</param>
/// <param name="Mended">How many of them were mended and stayed so.</param>
/// <param name="Members">Of how many members.</param>
/// <param name="Why">Why it did not go live by itself; empty where nobody meant it to.</param>
internal sealed record CountedNumbers(
    CountBasis Basis, Learnt Counted, ImmutableArray<CountedNumber> Numbers, ImmutableSortedSet<string> Out, int Cases, int Mended, int Members, string Why)
{
    private const string BasisOf = "basis", CountedOf = "counted", KeysOf = "numbers", SaysOf = "says", OutOf = "out", SizeOf = "size", WhyOf = "why";

    public static CountedNumbers Of(CountWork work, LearningReport report)
    {
        var says = report.Moves.Select((m, i) => (m.Target.Key, m.Says, At: i)).ToDictionary(m => m.Key, StringComparer.Ordinal);
        return new CountedNumbers(
            work.Basis,
            report.Learnt,
            [
                .. LearntSteps.Between(work.Now, report.Learnt, work.Unlearnt, work.Limits)
                    .OrderBy(s => says.TryGetValue(s.Key, out var told) ? told.At : int.MaxValue).ThenBy(s => s.Key, StringComparer.Ordinal)
                    .Select(s => new CountedNumber(s.Key, Says(work, s, says.TryGetValue(s.Key, out var told) ? told.Says : null))),
            ],
            ImmutableSortedSet.Create<string>(StringComparer.Ordinal),
            report.Cases,
            report.Mended,
            report.Members,
            "");
    }

    /// <summary>Nothing is left that would move.</summary>
    public bool IsAllOut => Numbers.All(n => Out.Contains(n.Key));

    /// <summary>What the club would have learnt with it.</summary>
    /// <param name="now">What it has learnt so far.</param>
    public Learnt Then(Learnt now) => LearntSteps.Without(now, Counted, Out);

    public ImmutableSortedDictionary<string, ImmutableArray<string>> Write() => ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, new KeyValuePair<string, ImmutableArray<string>>[]
    {
        new(BasisOf, Basis.Write()),
        new(CountedOf, [LearntText.Write(Counted)]),
        new(KeysOf, [.. Numbers.Select(n => n.Key)]),
        new(SaysOf, [.. Numbers.Select(n => n.Says)]),
        new(OutOf, [.. Out]),
        new(SizeOf, [Text(Cases), Text(Mended), Text(Members)]),
        new(WhyOf, Why.Length > 0 ? [Why] : []),
    });

    /// <returns>Null for a proposal that was not counted.</returns>
    public static CountedNumbers? Read(Proposal proposal)
    {
        ImmutableArray<string> Given(string of) => proposal.Answers.TryGetValue(of, out var given) ? given : [];
        if (proposal.Learnt.Length == 0 || CountBasis.Read(Given(BasisOf)) is not { } basis || Given(CountedOf) is not [var text] || LearntText.Read(text).Learnt is not { } counted) return null;
        var (keys, says, size) = (Given(KeysOf), Given(SaysOf), Given(SizeOf).Select(s => int.TryParse(s, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0).ToList());
        return new CountedNumbers(
            basis, counted, [.. keys.Zip(says, (k, s) => new CountedNumber(k, s))], Given(OutOf).ToImmutableSortedSet(StringComparer.Ordinal),
            size.ElementAtOrDefault(0), size.ElementAtOrDefault(1), size.ElementAtOrDefault(2), Given(WhyOf) is [var why, ..] ? why : "");
    }

    /// <summary>The count's own sentence; and what stood before, where something was learnt already.</summary>
    private static string Says(CountWork work, LearntStep step, string? told)
    {
        var called = TargetWords.Called(work.Unlearnt, step.Key);
        if (told is null) return $"{Say.Capital(called)}: what was learnt goes back to the rules' own word. It was {TargetWords.Number(step.Key, step.Before ?? 1)}.";
        return step.Before is { } before ? $"{told} Learnt so far: {TargetWords.Number(step.Key, before)}." : told;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A number that would move.</summary>
/// <param name="Says">A sentence or two, with the counts. Names nobody.</param>
internal sealed record CountedNumber(string Key, string Says);
