using System.Collections.Immutable;
using ShedBot.Knowledge.Shapes;
using static ShedBot.Knowledge.Shapes.PartShapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>The format of a club's file: the lists of a rule file, and what it changes in the base.</summary>
internal static class LayerShapes
{
    public const string InsteadOf = "instead of";

    private static readonly ImmutableArray<ItemShape> Owns = [.. RuleKinds.All.Select(k => Own(RuleKinds.Shape(k)))];

    private static readonly WordShape Kind = new("The kind of rule.", [.. RuleKinds.All.Select(RuleKinds.Word)]);

    private static readonly TextShape Name = Text("Its id; of a word, the concept.");

    public static ItemShape Mend { get; } = new("mend", "One value of a rule of the base, changed; or a text added to a list, or dropped from it.",
    [
        Must("of", Kind),
        Must("id", Name),
        Must("key", Text("The way to it: ask; shows as / drags / yes; states / loose / riders say.")),
        May("was", Text("What the base says there. Left out when nothing stands there.")),
        May("now", Text("What the club says.")),
        May("add", Text("A text that comes to the list.")),
        May("drop", Text("A text that goes from the list.")),
        .. OriginKeys,
    ]);

    public static ItemShape Retire { get; } = new("retired rule", "A rule of the base that is not used in this club.",
    [
        Must("of", Kind),
        Must("id", Name),
        Must("because", Text("Why, for whoever asks.")),
        .. OriginKeys,
    ]);

    public static ItemShape About { get; } = AdviceShapes.About with
    {
        Keys = [.. AdviceShapes.About.Keys, May("edition", new NumberShape("The number of the club's edition that this file was.", 0, int.MaxValue, Whole: true))],
    };

    public static ItemShape File { get; } = new("club's file", "A club's own rules, and what it changes in the base.",
    [
        May("about", About),
        .. RuleKinds.All.Select(k => May(RuleKinds.Section(k), new ListShape($"The club's own: {RuleKinds.Section(k)}.", Own(k)))),
        May("mends", new ListShape("What is changed in rules of the base.", Mend)),
        May("retires", new ListShape("Rules of the base that are not used in this club.", Retire)),
    ]);

    /// <summary>A rule of the kind, as it stands in a club's file.</summary>
    public static ItemShape Own(RuleKind kind) => Owns[(int)kind];

    private static ItemShape Own(ItemShape shape) => shape with
    {
        Keys = [.. shape.Keys, May(InsteadOf, Text("The fingerprint of the base's rule that this one stands for; filled in by itself."))],
    };
}
