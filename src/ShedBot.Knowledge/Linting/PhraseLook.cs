using System.Collections.Immutable;
using System.Text;
using ShedBot.Knowledge.Loading.Reading;

namespace ShedBot.Knowledge.Linting;

/// <summary>R060 to R063: what riders say, compared without case, spaces and punctuation.</summary>
internal static class PhraseLook
{
    public static void Look(LintContext lint)
    {
        var rules = lint.Rules;
        var openings = new Dictionary<string, (string Whose, string File, Loading.Yaml.Node At)>(StringComparer.Ordinal);
        Each(lint, rules.Complaints, "riders say", r => r.RidersSay, r => $"the complaint '{r.Id}'", openings);
        Each(lint, rules.Emergencies, "riders say", r => r.RidersSay, r => $"the emergency '{r.Id}'", openings);
        Each(lint, rules.HowTos, "riders ask", r => r.RidersAsk, r => $"the how-to '{r.Id}'", openings);
        foreach (var finding in rules.Findings)
            Inner(lint, finding, "states", [.. finding.Rule.States.Select(s => ($"'{finding.Rule.Id}: {s.Id}'", s.RidersSay))]);
        foreach (var fact in rules.Facts)
            Inner(lint, fact, "values", [.. fact.Rule.Values.Select(v => ($"'{fact.Rule.Id}: {v.Id}'", v.RidersSay))]);
        foreach (var howTo in rules.HowTos.Where(h => h.Rule.RidersAsk.IsEmpty))
            lint.Tell(PhraseRules.UnaskedHowTo, howTo, howTo.At("id"), $"nobody asks for the how-to '{howTo.Rule.Id}'.", "Add 'riders ask:' with the question as riders put it.");
    }

    private static void Each<T>(
        LintContext lint, ImmutableArray<Written<T>> rules, string key, Func<T, ImmutableArray<string>> phrases, Func<T, string> name, Dictionary<string, (string Whose, string File, Loading.Yaml.Node At)> seen)
    {
        foreach (var rule in rules) Phrases(lint, rule, phrases(rule.Rule), name(rule.Rule), i => rule.ItemAt(key, i), seen);
    }

    private static void Inner<T>(LintContext lint, Written<T> rule, string key, ImmutableArray<(string Name, ImmutableArray<string> Phrases)> states)
    {
        var seen = new Dictionary<string, (string Whose, string File, Loading.Yaml.Node At)>(StringComparer.Ordinal);
        for (var i = 0; i < states.Length; i++)
        {
            var at = rule.ItemAt(key, i);
            Phrases(lint, rule, states[i].Phrases, states[i].Name, _ => at, seen);
        }
    }

    private static void Phrases<T>(
        LintContext lint, Written<T> rule, ImmutableArray<string> phrases, string whose, Func<int, Loading.Yaml.Node> at, Dictionary<string, (string Whose, string File, Loading.Yaml.Node At)> seen)
    {
        for (var i = 0; i < phrases.Length; i++)
        {
            var bare = Bare(phrases[i]);
            if (bare.Length == 0)
                lint.Tell(PhraseRules.EmptyPhrase, rule, at(i), $"the phrase '{phrases[i]}' of {whose} has no word in it.", "Write what riders say.");
            else if (seen.TryAdd(bare, (whose, rule.File, at(i))))
                continue;
            else if (seen[bare].Whose == whose)
                lint.Tell(PhraseRules.RepeatedPhrase, rule, at(i), $"the phrase '{phrases[i]}' stands twice with {whose}.", "Take one out.");
            else
                lint.TellEither(PhraseRules.SharedPhrase, (seen[bare].File, seen[bare].At), (rule.File, at(i)), _ => $"the phrase '{phrases[i]}' stands with {whose} and with {seen[bare].Whose}.", "Keep it with one of them, or make both fuller.");
        }
    }

    /// <summary>Words only, in lower case, one space between.</summary>
    public static string Bare(string phrase)
    {
        var bare = new StringBuilder(phrase.Length);
        foreach (var c in phrase)
        {
            if (char.IsLetterOrDigit(c)) bare.Append(char.ToLowerInvariant(c));
            else if (c is not ('\'' or '\u2019') && bare.Length > 0 && bare[^1] != ' ') bare.Append(' ');
        }

        return bare.ToString().TrimEnd();
    }
}
