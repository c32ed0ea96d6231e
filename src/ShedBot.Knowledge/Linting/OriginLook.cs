using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R057: where every rule comes from. A file that forgets it is told once, not once a rule.</summary>
internal static class OriginLook
{
    public static void Look(LintContext lint)
    {
        var told = new HashSet<(string File, string Key)>();
        var rules = lint.Rules;
        Each(rules.Complaints, r => r.Origin);
        Each(rules.Findings, r => r.Origin);
        Each(rules.Facts, r => r.Origin);
        Each(rules.Faults, r => r.Origin);
        Each(rules.Checks, r => r.Origin);
        Each(rules.Covers, r => r.Origin);
        Each(rules.Repairs, r => r.Origin);
        Each(rules.HowTos, r => r.Origin);
        Each(rules.Emergencies, r => r.Origin);
        Each(rules.Words, r => r.Origin);
        Each(rules.Service, r => r.Origin);
        Each(rules.Triages, r => r.Origin);
        Each(rules.Eithers, r => r.Origin);

        void Each<T>(ImmutableArray<Written<T>> list, Func<T, Origin> origin)
        {
            foreach (var rule in list)
            {
                var o = origin(rule.Rule);
                Missing(rule, "source", o.Source.Length == 0);
                Missing(rule, "author", o.Author.Length == 0);
                Missing(rule, "date", o.Date == default);
            }
        }

        void Missing<T>(Written<T> rule, string key, bool missing)
        {
            if (missing && told.Add((rule.File, key)))
                lint.Tell(WorkRules.NoOrigin, rule, rule.Node, $"this rule has no {key}, and neither has 'about'.", $"Put '{key}:' under 'about' for the whole file, or with the rule.");
        }
    }
}
