using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>R090 to R099: a club's own layer.</summary>
internal static class LayerRules
{
    public static readonly LintRule NoTarget = new("R090", Severity.Error, "a change of a rule that is nowhere",
        "A mend or a retired rule names a rule of the base, and there is none of that kind and id. It is misspelt, or the base has dropped it.");

    public static readonly LintRule NoPath = new("R091", Severity.Error, "a mend of something that cannot be mended",
        "A mend changes one single value, or adds or drops one text of a list. An id is never changed, and steps, cautions and parts are changed by writing the whole rule anew.");

    public static readonly LintRule OneChange = new("R092", Severity.Error, "a mend that says nothing, or two things",
        "Each mend gives just one of 'now', 'add' and 'drop', so that each can be taken back by itself.");

    public static readonly LintRule Twice = new("R093", Severity.Error, "two changes of the same thing",
        "The club's file changes the same thing twice, or mends a rule that it also writes itself or retires. Only one of the two can count: take the other out.");

    public static readonly LintRule TooMany = new("R094", Severity.Error, "more rules and changes than a club can look after",
        "A club's file holds at most 2,000 rules and changes; more was written by no person, and could be reviewed by none.");

    public static readonly LintRule NotForClubs = new("R095", Severity.Error, "something that is not a club's to change",
        "The question before hands-on work, and those that tell a danger from a mere trouble, are asked in the same words everywhere; a club can neither change them nor leave them out.");

    public static readonly LintRule IdleMend = new("R096", Severity.Warning, "a mend that changes nothing",
        "The base says the same already. Take the mend out, or say what is to be different.");

    public static readonly LintRule Changes = new("R097", Severity.Error, "a change that does not fit what stands there",
        "What is to be changed, dropped or taken back is not there, or says something else by now: somebody else was faster. Look at the rule again.");

    public static readonly LintRule Contradiction = new("R098", Severity.Warning, "against a named source",
        "The base has its word from a source that it names; the club says the opposite from common practice. That may be right for the club's bikes. If it is, say where it is known from.");

    public static readonly LintRule LookAlike = new("R099", Severity.Warning, "a name that reads like another",
        "Two rules of one kind whose names differ by a hyphen, a plural or a letter that looks alike will be taken for each other by whoever mends them next. Often it was the other one that was meant.");
}
