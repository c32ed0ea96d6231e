using System.Collections.Immutable;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>A club's own word over the base: rules of its own, mends of the base's, and rules that it does not use. Immutable.</summary>
/// <remarks>Two layers are equal when they are written alike. How a file was laid out, its comments and the order of its rules do not count.</remarks>
public sealed class Layer : IEquatable<Layer>
{
    /// <summary>The largest club's file, in bytes; the whole of the base that is shipped is less than twice that.</summary>
    public const int MaxBytes = 256 * 1024;

    /// <summary>How many rules, mends and retired rules a layer holds at most.</summary>
    public const int MaxParts = 2000;

    /// <summary>The name under which a layer's own text is told in problems.</summary>
    public const string DefaultFile = "our-rules.yaml";

    internal Layer(string file, int? edition, IEnumerable<OwnRule> items, IEnumerable<Mend> mends, IEnumerable<Retirement> retires)
    {
        File = file;
        Edition = edition;
        Items = [.. items.OrderBy(i => i.Key)];
        Mends = [.. mends.OrderBy(m => m.Key).ThenBy(m => m.Slot, StringComparer.Ordinal)];
        Retires = [.. retires.OrderBy(r => r.Key)];
    }

    public static Layer Empty { get; } = new(DefaultFile, null, [], [], []);

    public bool IsEmpty => Items.IsEmpty && Mends.IsEmpty && Retires.IsEmpty;

    /// <summary>The number of the club's edition that the file was when it was handed out; null when it does not say.</summary>
    public int? Edition { get; }

    /// <summary>By kind and id.</summary>
    public ImmutableArray<OwnRule> Items { get; }

    /// <summary>By rule and way.</summary>
    public ImmutableArray<Mend> Mends { get; }

    /// <summary>By kind and id.</summary>
    public ImmutableArray<Retirement> Retires { get; }

    /// <summary>The name of the file that lines are counted in.</summary>
    internal string File { get; }

    internal IEnumerable<LayerPart> Parts => Items.Concat<LayerPart>(Mends).Concat(Retires);

    /// <summary>Never throws for what the file holds; an empty text is the empty layer.</summary>
    public static LayerRead Read(RuleText file) => file.Bytes.Length == 0 ? new LayerRead(Empty, []) : LayerReader.Read(file);

    /// <summary>One text for one layer: in the order of the format, one value a line. Read again it gives an equal layer.</summary>
    public string Write() => LayerWriter.Write(this, Edition);

    /// <summary>The same layer as the edition of that number; null for none. Lines are counted in the new text.</summary>
    public Layer As(int? edition) => Reread(new Layer(DefaultFile, edition, Items, Mends, Retires));

    /// <summary>Makes the changes one after the other; all of them, or none.</summary>
    public LayerResult Apply(IEnumerable<RuleChange> changes) => new LayerEdit(this).Apply(changes);

    /// <summary>What would make the other layer of this one: for a file that a moderator hands in.</summary>
    public ImmutableArray<RuleChange> ChangesTo(Layer other) => LayerDiff.Between(this, other);

    /// <summary>So that every line that is told is one of the text that the layer writes.</summary>
    internal static Layer Reread(Layer layer)
    {
        var read = Read(RuleText.FromText(DefaultFile, layer.Write()));
        return read.Layer ?? throw new InvalidOperationException("A layer wrote what it cannot read: " + string.Join(' ', read.Problems));
    }

    public bool Equals(Layer? other) => other is not null && (ReferenceEquals(this, other) || Write() == other.Write());

    public override bool Equals(object? obj) => Equals(obj as Layer);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Write());
}

/// <summary>What came of reading a club's file.</summary>
/// <param name="Layer">Null exactly when a problem is an error.</param>
/// <param name="Problems">By line.</param>
public sealed record LayerRead(Layer? Layer, ImmutableArray<Problem> Problems);

/// <summary>What came of changing a layer.</summary>
/// <param name="Layer">Null exactly when there is a problem; then nothing was changed.</param>
/// <param name="Problems">Their line is the number of the change, from 1; for a text that was put, the line in that text.</param>
public sealed record LayerResult(Layer? Layer, ImmutableArray<Problem> Problems);
