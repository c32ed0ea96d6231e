using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R050 to R059: checks and repairs that could leave a rider stranded or hurt.</summary>
internal static class WorkRules
{
    public static readonly LintRule NoRepair = new("R050", Severity.Warning, "a fault without a repair",
        "When this is the cause the coach can only hand over to a human. That may be right; if not, add a repair that mends it.");

    public static readonly LintRule NoProof = new("R051", Severity.Error, "a repair without proof",
        "A rider must be able to tell that it held before riding off. Say under 'prove' what to do and what to see.");

    public static readonly LintRule NoCaution = new("R052", Severity.Error, "dangerous work without a caution",
        "Work with the hazard 'medium' or 'high' needs at least one caution that says what is dangerous, what it does and how to avoid it.");

    public static readonly LintRule LowHazardNoCaution = new("R053", Severity.Warning, "a repair or service task with a hazard and no caution",
        "It is said to be dangerous, if little, but not how. Add a caution, or set the hazard to none.");

    public static readonly LintRule HandsOff = new("R054", Severity.Warning, "'hands on: no' with hands on",
        "The check needs a tool or a cover opened, so hands do go near the machine, and the question before hands-on work must come first. Set 'hands on: yes'.");

    public static readonly LintRule StopUnseen = new("R055", Severity.Error, "a 'stop riding' that is never said",
        "The state means that the bike must not be ridden, but no check tells its finding and it has no phrases with which riders volunteer it. Add a check or phrases.");

    public static readonly LintRule SoftSize = new("R056", Severity.Warning, "a size with nothing behind it",
        "Sizes differ between engines of the same name. A bare figure sends riders to buy the wrong part. Say how to measure or match the rider's own, or name the standard that the figure comes from.");

    public static readonly LintRule CutSentence = new("R058", Severity.Warning, "a sentence that a comma has cut in two",
        "In square brackets every comma starts a new line, so 'Less grease, more often' is shown as two. An entry that begins in lower case after one without a full stop is nearly always that. Put the whole sentence in quotes.");

    public static readonly LintRule NoOrigin = new("R057", Severity.Error, "a rule without source, author or date",
        "Every rule says where it comes from, who wrote it and when, so that it can be doubted, mended and taken back. Put it under 'about' for the whole file, or with the rule. A rule of the trade without a published source says 'common practice'.");

    public static readonly LintRule NoCautionBeside = new("R059", Severity.Warning, "no caution behind a hazard",
        "A club's check has no caution, and one of the base behind the same cover, or for the same finding, has the hazard 'medium' or 'high' and warns of it. Whoever has opened the cover has hands beside the same thing. Give the check the caution too, if that is so.");
}
