using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>One thing that stands in a club's layer.</summary>
public abstract class LayerPart
{
    private protected LayerPart(RuleKey key, Credit credit, MapNode node)
    {
        Key = key;
        Credit = credit;
        Node = node;
    }

    /// <summary>The rule that it is about.</summary>
    public RuleKey Key { get; }

    public Credit Credit { get; }

    /// <summary>The line of the club's file on which it starts, from 1.</summary>
    public int Line => Node.Line;

    internal MapNode Node { get; }

    /// <summary>What no two parts of a layer have in common.</summary>
    internal abstract string Slot { get; }

    /// <summary>The part as a file holds it.</summary>
    internal string Text => LayerWriter.Item(Node, Shape);

    private protected abstract ItemShape Shape { get; }

    private protected MapNode Saying(string key, string text) =>
        Node with { Entries = Node.Entries.Add(new Entry(NodePath.Scalar(key, Node), NodePath.Scalar(text, Node))) };
}

/// <summary>A whole rule of the club's.</summary>
public sealed class OwnRule : LayerPart
{
    internal OwnRule(RuleKey key, Credit credit, string? insteadOf, MapNode node)
        : base(key, credit, node) => InsteadOf = insteadOf;

    /// <summary>The fingerprint of the base's rule that it stands for, or null.</summary>
    public string? InsteadOf { get; }

    /// <summary>The item as a file holds it, without the leading '- ' and without 'instead of'.</summary>
    public string Yaml => LayerWriter.Item(this);

    /// <summary>The same, written instead of the base's rule of that fingerprint.</summary>
    internal OwnRule Over(string fingerprint) => new(Key, Credit, fingerprint, Saying(LayerShapes.InsteadOf, fingerprint));

    internal override string Slot => "own rule";

    private protected override ItemShape Shape => LayerShapes.Own(Key.Kind);

    public override string ToString() => $"the club's own {RuleKinds.Word(Key.Kind)} '{Key.Id}'";
}

/// <summary>One value or one text of a rule of the base, changed.</summary>
public sealed class Mend : LayerPart
{
    internal Mend(RuleKey key, RulePath path, string? was, string? now, string? add, string? drop, Credit credit, MapNode node)
        : base(key, credit, node) => (Path, Was, Now, Add, Drop) = (path, was, now, add, drop);

    public RulePath Path { get; }

    /// <summary>What the base said there when it was mended; null when nothing stood there, and for lists.</summary>
    public string? Was { get; }

    /// <summary>What the club says there; null for lists.</summary>
    public string? Now { get; }

    public string? Add { get; }

    public string? Drop { get; }

    /// <summary>The same, with what the base said.</summary>
    internal Mend From(string was) => new(Key, Path, was, Now, Add, Drop, Credit, Saying("was", was));

    internal override string Slot => Now is not null ? $"mend {Path}" : $"mend {Path} {Add ?? Drop}";

    private protected override ItemShape Shape => LayerShapes.Mend;

    public override string ToString() => $"the mend of '{Path}' of the {RuleKinds.Word(Key.Kind)} '{Key.Id}'";
}

/// <summary>A rule of the base that is not used in this club.</summary>
public sealed class Retirement : LayerPart
{
    internal Retirement(RuleKey key, string because, Credit credit, MapNode node)
        : base(key, credit, node) => Because = because;

    public string Because { get; }

    internal override string Slot => "retired";

    private protected override ItemShape Shape => LayerShapes.Retire;

    public override string ToString() => $"the retired {RuleKinds.Word(Key.Kind)} '{Key.Id}'";
}
