using System.Collections.Immutable;

namespace ShedBot.Knowledge.Compiling;

/// <summary>How much more or less common a fault has turned out than its word says.</summary>
/// <param name="Times">What the odds of the fault, before anything is known, are multiplied with; in [<see cref="Learnt.LeastTimes"/>, <see cref="Learnt.MostTimes"/>].</param>
public sealed record LearntOdds(string Fault, double Times);

/// <summary>How often a fault has turned out to show as a state of a finding, in place of the chance of its word.</summary>
/// <param name="Chance">'If only this is wrong, how often do you see it?' (gross, leak inside); in [<see cref="Learnt.LeastChance"/>, <see cref="Learnt.MostChance"/>].</param>
public sealed record LearntLink(string Fault, string Finding, string State, double Chance);

/// <summary>How often a repair has turned out to mend a fault, in place of the chance of its word.</summary>
/// <param name="Chance">In [<see cref="Learnt.LeastChance"/>, <see cref="Learnt.MostChance"/>].</param>
public sealed record LearntMend(string Repair, string Fault, double Chance);

/// <summary>
/// What was counted from mended cases, laid over the words of the rules when they are compiled. It only moves numbers: an entry about a fault, link or
/// repair that the rules do not have, or have no more, moves nothing. 'Something else' is never moved.
/// </summary>
public sealed class Learnt : IEquatable<Learnt>
{
    public const double LeastTimes = 0.05, MostTimes = 20, LeastChance = 0.005, MostChance = 0.995;

    /// <summary>Decimals that are kept; more would be noise.</summary>
    public const int Decimals = 4;

    private Learnt(ImmutableArray<LearntOdds> odds, ImmutableArray<LearntLink> links, ImmutableArray<LearntMend> mends) =>
        (Odds, Links, Mends) = (odds, links, mends);

    public static Learnt Nothing { get; } = new([], [], []);

    /// <summary>By fault.</summary>
    public ImmutableArray<LearntOdds> Odds { get; }

    /// <summary>By fault, finding and state.</summary>
    public ImmutableArray<LearntLink> Links { get; }

    /// <summary>By repair and fault.</summary>
    public ImmutableArray<LearntMend> Mends { get; }

    public bool IsNothing => Odds.IsEmpty && Links.IsEmpty && Mends.IsEmpty;

    /// <summary>Puts the entries in order and rounds them to <see cref="Decimals"/> decimals.</summary>
    /// <exception cref="ArgumentException">A number is out of its range, an id is no id, or two entries are about the same thing.</exception>
    public static Learnt Of(IEnumerable<LearntOdds> odds, IEnumerable<LearntLink> links, IEnumerable<LearntMend> mends)
    {
        var learnt = Ordered(odds, links, mends);
        return LearntCheck.Wrong(learnt) is { } wrong ? throw new ArgumentException(wrong, nameof(odds)) : learnt;
    }

    /// <summary>The same unchecked.</summary>
    internal static Learnt Ordered(IEnumerable<LearntOdds> odds, IEnumerable<LearntLink> links, IEnumerable<LearntMend> mends) => new(
        [.. odds.Select(o => o with { Times = Rounded(o.Times) }).OrderBy(o => o.Fault, StringComparer.Ordinal)],
        [
            .. links.Select(l => l with { Chance = Rounded(l.Chance) }).OrderBy(l => l.Fault, StringComparer.Ordinal)
                .ThenBy(l => l.Finding, StringComparer.Ordinal).ThenBy(l => l.State, StringComparer.Ordinal),
        ],
        [.. mends.Select(m => m with { Chance = Rounded(m.Chance) }).OrderBy(m => m.Repair, StringComparer.Ordinal).ThenBy(m => m.Fault, StringComparer.Ordinal)]);

    /// <summary>1 where nothing was learnt.</summary>
    public double TimesOf(string fault) => Odds.FirstOrDefault(o => o.Fault == fault)?.Times ?? 1;

    /// <summary>Null where nothing was learnt.</summary>
    public double? ChanceOf(string fault, string finding, string state) =>
        Links.FirstOrDefault(l => l.Fault == fault && l.Finding == finding && l.State == state)?.Chance;

    /// <summary>Null where nothing was learnt.</summary>
    public double? MendsOf(string repair, string fault) => Mends.FirstOrDefault(m => m.Repair == repair && m.Fault == fault)?.Chance;

    public bool Equals(Learnt? other) =>
        other is not null && Odds.SequenceEqual(other.Odds) && Links.SequenceEqual(other.Links) && Mends.SequenceEqual(other.Mends);

    public override bool Equals(object? obj) => Equals(obj as Learnt);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var odds in Odds) hash.Add(odds);
        foreach (var link in Links) hash.Add(link);
        foreach (var mend in Mends) hash.Add(mend);
        return hash.ToHashCode();
    }

    private static double Rounded(double number) => Math.Round(number, Decimals, MidpointRounding.ToEven);
}
