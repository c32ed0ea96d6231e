using System.Collections.Immutable;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Linting;

/// <summary>R030 to R035: strengths against the leak, against each other, and by themselves.</summary>
internal static class StrengthLook
{
    private const double Least = 0.10;

    /// <summary>A fault of which no check shows anything more often than this is hardly ever found.</summary>
    private const double Seldom = 0.20;

    /// <summary>Beyond this the hazard that the fault would need grows so large that the sums lose their last digits.</summary>
    private const double MostBeside = 1.25;

    public static void Look(LintContext lint)
    {
        foreach (var finding in lint.Rules.Findings)
        {
            if (Strengths.Leak(finding.Rule, lint.Options).Skip(1).Sum() > 1 - Least)
                lint.Tell(StrengthRules.LeakAddsUp, finding, finding.At("seen anyway"), $"the abnormal states of '{finding.Rule.Id}' are seen anyway in over 90 %.", "Weaken the words, or turn the finding round.");
        }

        var told = lint.Rules.Checks.Select(c => c.Rule.Tells).ToHashSet(StringComparer.Ordinal);
        foreach (var fault in lint.Rules.Faults)
        {
            SeldomFound(lint, fault, told);
            foreach (var (finding, words) in fault.Rule.ShowsAs.OrderBy(s => s.Key, StringComparer.Ordinal))
            {
                if (!lint.States.TryGetValue(finding, out var states)) continue;
                var at = fault.KeyAt("shows as", finding);
                var leak = lint.Leak(finding);
                var sum = Strengths.Sum(words.Values);
                if (sum > Strengths.MostTheyMayAddUpTo)
                    lint.Tell(StrengthRules.AddUp, fault, at, FormattableString.Invariant($"the chances of the states of '{finding}' for '{fault.Rule.Id}' add up to {sum:0.00}."), "Weaken the less usual ones: the states exclude each other.");
                else if (sum + SeenBeside(lint, finding, words) > MostBeside)
                    lint.Tell(StrengthRules.NoRoomBeside, fault, at, $"what '{fault.Rule.Id}' shows of '{finding}' leaves no room for the other states that are seen anyway.", "Weaken the word, lower 'seen anyway', or list the other state too.");
                foreach (var (state, word) in words.OrderBy(w => w.Key, StringComparer.Ordinal))
                {
                    var v = states.IndexOf(state);
                    if (v > 0 && ChanceWords.TryChance(word, out var chance)) Against(lint, fault, fault.KeyAt("shows as", finding, state), finding, state, word, chance.CompareTo(leak[v]));
                }
            }
        }
    }

    private static void SeldomFound(LintContext lint, Written<FaultRule> fault, HashSet<string> told)
    {
        (string Finding, double Chance)[] shown =
            [.. fault.Rule.ShowsAs.Where(s => told.Contains(s.Key)).OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => (s.Key, Strengths.Sum(s.Value.Values)))];
        if (shown.Length == 0 || shown.Any(s => s.Chance >= Seldom)) return;
        var best = shown.MaxBy(s => s.Chance).Finding;
        lint.Tell(StrengthRules.SeldomFound, fault, fault.KeyAt("shows as", best), $"of all that can be looked at, '{fault.Rule.Id}' shows '{best}' most, and that seldom.", "Raise the word, or name a finding that gives it away more often.");
    }

    private static void Against(LintContext lint, Written<FaultRule> fault, Node at, string finding, string state, string word, int comparedWithLeak)
    {
        if (comparedWithLeak > 0) return;
        var seen = lint.Findings.TryGetValue(finding, out var rule) && rule.Rule.SeenAnyway.TryGetValue(state, out var leakWord) ? $"'{leakWord}'" : "about 1 %";
        if (comparedWithLeak < 0)
            lint.Tell(StrengthRules.WeakerThanLeak, fault, at, $"'{fault.Rule.Id}' shows as '{finding}: {state}' with '{word}', but that is seen anyway with {seen}.", "Raise the word, lower 'seen anyway' of the finding, or leave the line out.");
        else
            lint.Tell(StrengthRules.SameAsLeak, fault, at, $"'{fault.Rule.Id}' shows as '{finding}: {state}' with '{word}', and that is seen anyway just as often.", "Raise the word, or leave the line out.");
    }

    /// <summary>What the states that the fault does not list are seen anyway, where the finding says so.</summary>
    private static double SeenBeside(LintContext lint, string finding, ImmutableDictionary<string, string> words) =>
        lint.Findings.TryGetValue(finding, out var rule) ? Strengths.Sum(rule.Rule.SeenAnyway.Where(s => !words.ContainsKey(s.Key)).Select(s => s.Value)) : 0;
}
