using System.Collections.Immutable;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Shapes;

/// <summary>The pieces that several kinds of rule share.</summary>
internal static class PartShapes
{
    public static Key Must(string name, Shape shape) => new(name, shape, Required: true);

    public static Key May(string name, Shape shape) => new(name, shape, Required: false);

    public static TextShape Text(string doc) => new(doc);

    public static ListShape Texts(string doc, int atLeast = 0) => new(doc, new TextShape("One text a line."), atLeast);

    public static IdShape Id(string doc = "A short name of its own, lower case with hyphens. It is never shown to riders and should never change.") => new(doc);

    public static IdShape Reference(string kind) => new($"The id of a {kind}.");

    public static WordShape YesNo(string doc) => new(doc, ["yes", "no"]);

    public static WordShape Chance(string doc) => new(doc, [.. ChanceWords.Scale.Select(s => s.Word)]);

    public static NumberShape Minutes { get; } = new("Minutes in a beginner's hands.", 0, 600);

    public static NumberShape Effort { get; } = new("Trouble that minutes do not show (awkward, dirty, needs a second person); 1 is worth a minute.", 0, 600);

    public static WordShape HazardLevel { get; } = new("How dangerous it is for whoever does it.", ["none", "low", "medium", "high"]);

    public static ListShape Tools { get; } = Texts("What must be at hand.");

    public static ItemShape Caution { get; } = new("caution", "A caution: signal word, hazard, consequence, how to avoid it.",
    [
        Must("word", new WordShape("DANGER: will kill or maim. WARNING: could. CAUTION: could hurt lightly. NOTICE: harm to things only.", [.. SignalWords.All])),
        Must("hazard", Text("What is dangerous: Hot exhaust.")),
        Must("consequence", Text("What it does: burns skin.")),
        Must("avoid", Text("How to avoid it: let it cool for 20 minutes.")),
    ]);

    public static ListShape Cautions { get; } = new("Cautions shown before the work starts, most serious first.", Caution);

    /// <summary>Every item may carry its own; else the file's <c>about:</c> counts.</summary>
    public static ImmutableArray<Key> OriginKeys { get; } =
    [
        May("source", Text("Where it comes from: a published source with edition and page, or 'common practice'.")),
        May("author", Text("Who wrote it down.")),
        May("said by", Text("Whose tip it was, when another wrote it down.")),
        May("date", new DateShape("The day of its last change, yyyy-mm-dd.")),
    ];
}
