using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R021, R022, R071, R079, R080: what service tasks point at, and whether anything leads to them.</summary>
internal static class ServiceReferences
{
    public static void Look(LintContext lint)
    {
        var followed = lint.Rules.Service.SelectMany(t => t.Rule.After).SelectMany(a => a.Events).ToHashSet(StringComparer.Ordinal);
        foreach (var task in lint.Rules.Service)
        {
            var (rule, whose) = (task.Rule, $"the service task '{task.Rule.Id}'");
            for (var i = 0; i < rule.After.Length; i++) Events(lint, task, i, whose);
            for (var i = 0; i < rule.OnlyIf.Length; i++) OnlyIf(lint, task, i, whose);
            Names(lint, task, "done by", rule.DoneBy, lint.Repairs.Keys, $"{whose} is done by", "repair");
            Names(lint, task, "reveals", rule.Reveals, lint.Complaints.Keys, $"{whose} reveals", "complaint");
            if (task.Node["every"] is null && task.Node["after"] is null && !rule.BeforeEachRide && !followed.Contains(rule.Id))
                lint.Tell(ServiceRules.NeverDue, task, task.At("id"), $"{whose} is never due.", "Add 'every:' (14 riding days), 'after:' an event, or 'before each ride: yes'.");
        }
    }

    private static void Events(LintContext lint, Written<ServiceRule> task, int index, string whose)
    {
        var at = task.ItemAt("after", index);
        foreach (var name in task.Rule.After[index].Events)
        {
            if (name == task.Rule.Id)
                lint.Tell(ServiceRules.AfterItself, task, at, $"{whose} comes after itself.", "Say under 'every' how often it is due.");
            else if (name != ServiceAfter.Fitted && !lint.Repairs.ContainsKey(name) && !lint.Service.ContainsKey(name))
                lint.Tell(ReferenceRules.Dangling, task, at, $"{whose} comes after '{name}', which is no repair and no service task.",
                    $"{Nearest.Ask(name, lint.Repairs.Keys.Concat(lint.Service.Keys).Append(ServiceAfter.Fitted))} It can be: fitted, a repair, another service task.".TrimStart());
        }
    }

    private static void OnlyIf(LintContext lint, Written<ServiceRule> task, int index, string whose)
    {
        var (at, condition) = (task.ItemAt("only if", index), task.Rule.OnlyIf[index]);
        if (condition.Fact.Length == 0) return;
        if (!lint.Facts.TryGetValue(condition.Fact, out var fact))
        {
            lint.Tell(ReferenceRules.Dangling, task, at, $"{whose} asks for '{condition.Fact}', which is no fact.", Nearest.Ask(condition.Fact, lint.Facts.Keys));
            return;
        }

        var known = fact.Rule.Values.Select(v => v.Id).ToList();
        foreach (var value in condition.Values.Where(v => !known.Contains(v)))
            lint.Tell(ReferenceRules.UnknownState, task, at, $"the fact '{condition.Fact}' has no value '{value}'.", Nearest.AskOrList(value, known));
        if (known.TrueForAll(v => condition.Values.Contains(v)))
            lint.Tell(ServiceRules.IdleOnlyIf, task, at, $"'{condition.Fact}' is one of these on every bike.", "List those that the task is for, or take the line out.");
    }

    private static void Names(LintContext lint, Written<ServiceRule> task, string key, IReadOnlyList<string> names, IReadOnlyCollection<string> known, string does, string kind)
    {
        for (var i = 0; i < names.Count; i++)
        {
            if (!known.Contains(names[i]))
                lint.Tell(ReferenceRules.Dangling, task, task.ItemAt(key, i), $"{does} '{names[i]}', which is no {kind}.", Nearest.Ask(names[i], known));
        }
    }
}
