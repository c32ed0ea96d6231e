using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;

namespace ShedBot.Knowledge.Linting;

/// <summary>R058: lists that are shown to riders line by line.</summary>
internal static class SentenceLook
{
    public static void Look(LintContext lint)
    {
        var rules = lint.Rules;
        Each(lint, rules.Checks, "how", r => r.How);
        Each(lint, rules.Covers, "how", r => r.How);
        Each(lint, rules.Repairs, "prove", r => r.Prove);
        Each(lint, rules.Repairs, "watch", r => r.Watch);
        Each(lint, rules.Repairs, "prevent", r => r.Prevent);
        Each(lint, rules.HowTos, "answer", r => r.Answer);
        Each(lint, rules.Emergencies, "do now", r => r.DoNow);
        Each(lint, rules.Eithers, "until known", r => r.UntilKnown);
    }

    private static void Each<T>(LintContext lint, ImmutableArray<Written<T>> rules, string key, Func<T, ImmutableArray<string>> lines)
    {
        foreach (var rule in rules)
        {
            var list = lines(rule.Rule);
            for (var i = 1; i < list.Length; i++)
            {
                if (char.IsLower(list[i][0]) && char.IsLetterOrDigit(list[i - 1][^1]))
                    lint.Tell(WorkRules.CutSentence, rule, rule.ItemAt(key, i), $"under '{key}' stands '{list[i]}' by itself after '{list[i - 1]}'.", "If it is one sentence, put it in quotes; if not, begin with a capital letter.");
            }
        }
    }
}
