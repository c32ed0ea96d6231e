using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R020 to R029: names that must fit together.</summary>
internal static class ReferenceRules
{
    public static readonly LintRule DuplicateId = new("R020", Severity.Error, "an id stands twice",
        "Ids name things for good, in rules, in cases and in logs, so each may stand once for its kind. Findings and complaints share their names, since both can be shown by a fault and told by a check; so do repairs and service tasks, since a task can come after both.");

    public static readonly LintRule Dangling = new("R021", Severity.Error, "a name of something that is nowhere",
        "The rule points at a finding, fault, check, cover, fact, repair, service task, complaint or emergency that no file defines. It is usually misspelt.");

    public static readonly LintRule UnknownState = new("R022", Severity.Error, "a state that its finding does not have",
        "A strength, an answer or a leak names a state of a finding; the finding must list it. A complaint has the states 'no' and 'yes'. A fact has its values.");

    public static readonly LintRule NormalState = new("R023", Severity.Error, "the normal state where only others make sense",
        "Faults produce the abnormal states; the first state of a finding is what is left when nothing does. Say how often the others are seen, or turn the finding round.");

    public static readonly LintRule Triage = new("R024", Severity.Error, "not exactly one question before hands-on work",
        "Before the first step that puts hands near the machine the rider is asked once whether it is safe to. There must be one such question in all files together, under 'before hands on'.");

    public static readonly LintRule ReservedId = new("R025", Severity.Error, "an id that is taken",
        "The name 'something-else' stands for what no rule lists, and is added by itself; 'fitted' stands for the day the kit was fitted.");

    public static readonly LintRule NothingThere = new("R026", Severity.Error, "no fault or no complaint at all",
        "With no fault there is nothing to find, and with no complaint nothing that a rider could come with.");
}
