namespace ShedBot.Knowledge.Compiling;

/// <summary>What is wrong with learnt numbers by themselves, without any rules beside them.</summary>
internal static class LearntCheck
{
    /// <summary>The longest id that is taken.</summary>
    private const int MostLetters = 100;

    /// <returns>A sentence about the first thing that is wrong; null when all is well.</returns>
    public static string? Wrong(Learnt learnt) =>
        learnt.Odds.Select(o => Wrong([o.Fault], o.Times, Learnt.LeastTimes, Learnt.MostTimes))
            .Concat(learnt.Links.Select(l => Wrong([l.Fault, l.Finding, l.State], l.Chance, Learnt.LeastChance, Learnt.MostChance)))
            .Concat(learnt.Mends.Select(m => Wrong([m.Repair, m.Fault], m.Chance, Learnt.LeastChance, Learnt.MostChance)))
            .Append(Twice(learnt.Odds.Select(o => o.Fault)))
            .Append(Twice(learnt.Links.Select(l => $"{l.Fault} {l.Finding} {l.State}")))
            .Append(Twice(learnt.Mends.Select(m => $"{m.Repair} {m.Fault}")))
            .FirstOrDefault(w => w is not null);

    private static string? Wrong(string[] ids, double number, double least, double most) =>
        ids.Any(id => !IsId(id)) ? $"'{string.Join(' ', ids)}' holds something that is not the id of a rule."
        : !(number >= least && number <= most) ? FormattableString.Invariant($"The number of '{string.Join(' ', ids)}' is {number}; it must lie between {least} and {most}.")
        : null;

    private static string? Twice(IEnumerable<string> keys) =>
        keys.GroupBy(k => k, StringComparer.Ordinal).FirstOrDefault(g => g.Skip(1).Any()) is { } twice ? $"'{twice.Key}' stands there more than once." : null;

    private static bool IsId(string id) => id.Length is > 0 and <= MostLetters && id.All(c => c is '-' or (>= 'a' and <= 'z') or (>= '0' and <= '9'));
}
