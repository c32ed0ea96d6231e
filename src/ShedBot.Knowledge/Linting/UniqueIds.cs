using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R020, R025: every id once.</summary>
internal static class UniqueIds
{
    public static void Look(LintContext lint)
    {
        var rules = lint.Rules;
        var seen = new Dictionary<string, (string File, Node Id)>(StringComparer.Ordinal);
        var work = new Dictionary<string, (string File, Node Id)>(StringComparer.Ordinal);
        Each(lint, rules.Complaints, "complaint", r => r.Id, seen);
        Each(lint, rules.Findings, "finding", r => r.Id, seen);
        Each(lint, rules.Facts, "fact", r => r.Id, []);
        Each(lint, rules.Faults, "fault", r => r.Id, []);
        Each(lint, rules.Checks, "check", r => r.Id, []);
        Each(lint, rules.Covers, "cover", r => r.Id, []);
        Each(lint, rules.Repairs, "repair", r => r.Id, work);
        Each(lint, rules.Service, "service task", r => r.Id, work);
        Each(lint, rules.HowTos, "how to", r => r.Id, []);
        Each(lint, rules.Emergencies, "emergency", r => r.Id, []);
        Each(lint, rules.Eithers, "question that tells apart", r => r.Id, []);
        foreach (var finding in rules.Findings) Inner(lint, finding, "states", $"the finding '{finding.Rule.Id}'", finding.Rule.States.Select(s => s.Id));
        foreach (var fact in rules.Facts) Inner(lint, fact, "values", $"the fact '{fact.Rule.Id}'", fact.Rule.Values.Select(v => v.Id));
        foreach (var fault in rules.Faults) Inner(lint, fault, "moved by", $"the fault '{fault.Rule.Id}'", fault.Rule.MovedBy.Select(m => $"{m.Fact}: {m.Value}"));
        foreach (var fault in rules.Faults.Where(f => f.Rule.Id == KnowledgeBase.SomethingElse))
            lint.Tell(ReferenceRules.ReservedId, fault, fault.At("id"), "the id 'something-else' is taken.", "It is added by itself; give this fault its own name.");
        foreach (var repair in rules.Repairs.Where(r => r.Rule.Id == ServiceAfter.Fitted)) Fitted(lint, repair);
        foreach (var task in rules.Service.Where(t => t.Rule.Id == ServiceAfter.Fitted)) Fitted(lint, task);
    }

    private static void Fitted<T>(LintContext lint, Written<T> rule) =>
        lint.Tell(ReferenceRules.ReservedId, rule, rule.At("id"), "the id 'fitted' is taken.", "It stands for the day the kit was fitted; give this one its own name.");

    private static void Each<T>(LintContext lint, ImmutableArray<Written<T>> rules, string kind, Func<T, string> id, Dictionary<string, (string File, Node Id)> seen)
    {
        foreach (var rule in rules)
        {
            var name = id(rule.Rule);
            if (name.Length == 0 || seen.TryAdd(name, (rule.File, rule.At("id")))) continue;
            lint.TellEither(ReferenceRules.DuplicateId, seen[name], (rule.File, rule.At("id")), other => $"the {kind} '{name}' stands twice; the other is at {other}.", "Give one of them another id, or join them.");
        }
    }

    private static void Inner<T>(LintContext lint, Written<T> rule, string key, string whose, IEnumerable<string> ids)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var index = -1;
        foreach (var id in ids)
        {
            index++;
            if (id.Length > 0 && !seen.Add(id))
                lint.Tell(ReferenceRules.DuplicateId, rule, rule.ItemAt(key, index), $"'{id}' stands twice under '{key}' of {whose}.", "Change one of them, or take it out.");
        }
    }
}
