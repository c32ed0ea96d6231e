using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R010 to R019: the words and values of a rule, each by itself.</summary>
internal static class ShapeRules
{
    public static readonly LintRule UnknownKey = new("R010", Severity.Error, "an unknown key",
        "A key that is not known would be passed over in silence, and a rule would say less than its author thinks. It is usually misspelt, or indented one step too far or too little.");

    public static readonly LintRule MissingKey = new("R011", Severity.Error, "a key is missing",
        "The rule cannot be used without it.");

    public static readonly LintRule WrongKind = new("R012", Severity.Error, "a value of the wrong kind",
        "A list was expected and a text stands there, or the other way round.");

    public static readonly LintRule UnknownWord = new("R013", Severity.Error, "an unknown word",
        "Chances, frequencies, hazards and the like are told in fixed words, so that two authors mean the same by them.");

    public static readonly LintRule BadNumber = new("R014", Severity.Error, "a number that makes no sense",
        "Not a number, below 0, or larger than any real job: over 600 minutes is more than a working day, and a slip of the finger.");

    public static readonly LintRule BadId = new("R015", Severity.Error, "an id that is no id",
        "Ids are lower-case words with hyphens, so that they can be typed, searched and kept for good.");

    public static readonly LintRule EmptyText = new("R016", Severity.Error, "an empty text",
        "An empty text would be shown to a rider as a blank line, and an empty phrase would match everything.");

    public static readonly LintRule TooLong = new("R017", Severity.Error, "a text that is too long",
        "No one reads it on a telephone beside a bike, and a chat message cannot carry it. Split it into steps.");

    public static readonly LintRule BadDate = new("R018", Severity.Error, "a date that is none",
        "Dates are written yyyy-mm-dd and must exist.");

    public static readonly LintRule TooFew = new("R019", Severity.Error, "a list that is too short",
        "A finding needs a normal state and another; a list of steps or phrases needs at least one.");
}
