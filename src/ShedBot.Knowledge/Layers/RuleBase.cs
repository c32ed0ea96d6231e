using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>The project's rules, read and checked once and shared by all clubs. Immutable.</summary>
public sealed class RuleBase
{
    private readonly FrozenDictionary<RuleKey, MapNode> nodes;

    private RuleBase(Draft draft, FrozenDictionary<string, MapNode?> abouts, string firstFile, KnowledgeBase? knowledge, ImmutableArray<Problem> problems)
    {
        Draft = draft;
        Abouts = abouts;
        FirstFile = firstFile;
        Knowledge = knowledge;
        Problems = problems;
        Shared = knowledge is null ? null : new Shared(draft, knowledge);
        nodes = LayeredDraft.Nodes(draft);
    }

    /// <summary>The rules of a club without a word of its own; null exactly when a problem is an error.</summary>
    public KnowledgeBase? Knowledge { get; }

    /// <summary>By file and line.</summary>
    public ImmutableArray<Problem> Problems { get; }

    /// <summary>What clubs share with the base; null when it did not load.</summary>
    internal Shared? Shared { get; }

    internal Draft Draft { get; }

    internal FrozenDictionary<string, MapNode?> Abouts { get; }

    internal string FirstFile { get; }

    /// <summary>Never throws for what the files hold.</summary>
    public static RuleBase Of(IReadOnlyList<RuleText> files)
    {
        var problems = new ProblemList();
        var draft = new DraftBuilder();
        var abouts = new Dictionary<string, MapNode?>(StringComparer.Ordinal);
        var unread = false;
        var inOrder = files.OrderBy(f => f.Name, StringComparer.Ordinal).ToList();
        foreach (var file in inOrder)
        {
            if (TextGate.Read(file, problems) is { } text && YamlTree.Read(file.Name, text, problems) is { } root)
            {
                new ShapeCheck(file.Name, problems).Check(root, AdviceShapes.File, "the file", "");
                draft.Add(file.Name, root);
                abouts[file.Name] = root["about"] as MapNode;
            }
            else
            {
                unread = true;
            }
        }

        var rules = draft.Build();
        var first = inOrder.Count > 0 ? inOrder[0].Name : "(no file)";
        LintRun.All(rules, CompileOptions.Default, first, allRead: !unread, problems);
        var knowledge = problems.HasErrors ? null : Compiler.Compile(rules, CompileOptions.Default, RulesVersion.Of(inOrder));
        return new RuleBase(rules, abouts.ToFrozenDictionary(StringComparer.Ordinal), first, knowledge, problems.Sorted());
    }

    public bool Has(RuleKey key) => nodes.ContainsKey(key);

    /// <summary>Every rule of the base that a club can change, by kind and id.</summary>
    public IEnumerable<RuleKey> Keys => nodes.Keys.Order();

    /// <summary>The rule as one item of a file, to begin writing a club's own from; null when there is none.</summary>
    public string? YamlOf(RuleKey key) => nodes.TryGetValue(key, out var node) ? LayerWriter.Item(node, RuleKinds.Shape(key.Kind)) : null;

    /// <summary>The single value that stands there; null when nothing does, or more than one.</summary>
    public string? ValueAt(RuleKey key, RulePath path) =>
        nodes.TryGetValue(key, out var node) && NodePath.At(node, RuleKinds.Shape(key.Kind), path) is Scalar scalar ? scalar.Text.Trim() : null;

    /// <summary>Eight hex digits that change when the rule says anything else; null when there is no such rule.</summary>
    /// <remarks>The start of SHA-256 over the rule as <see cref="YamlOf"/> writes it.</remarks>
    public string? FingerprintOf(RuleKey key) =>
        YamlOf(key) is { } yaml ? Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(yaml)))[..8] : null;

    /// <summary>
    /// Fills in what the club's file need not say: what the base said where a value is changed, and which rule of the base a whole one stands
    /// for. Only of what is new: what was published stays as it is, so that a change of the base in between is still told.
    /// </summary>
    public Layer Settle(Layer layer, Layer published)
    {
        var old = published.Parts.Select(p => (p.Key, p.Slot, p.Text)).ToHashSet();
        return Layer.Reread(new Layer(
            layer.File, layer.Edition,
            layer.Items.Select(i => i.InsteadOf is null && !old.Contains((i.Key, i.Slot, i.Text)) && FingerprintOf(i.Key) is { } print ? i.Over(print) : i),
            layer.Mends.Select(m => m is { Now: not null, Was: null } && !old.Contains((m.Key, m.Slot, m.Text)) && ValueAt(m.Key, m.Path) is { } was ? m.From(was) : m),
            layer.Retires));
    }

    /// <summary>The changes with which the club stands by its word; the conflict is not told again until the base changes once more.</summary>
    public ImmutableArray<RuleChange> StandBy(Layer layer, Conflict conflict) => Find(layer, conflict) switch
    {
        OwnRule own => [new PutRule(own.Key, own.Yaml, FingerprintOf(own.Key))],
        Mend { Now: { } now } mend => [new Unmend(mend.Key, mend.Path), new MendValue(mend.Key, mend.Path, ValueAt(mend.Key, mend.Path), now, mend.Credit)],
        Mend mend => [new Unmend(mend.Key, mend.Path, mend.Add, mend.Drop)],
        _ => [],
    };

    /// <summary>The changes with which the club takes the base's new word.</summary>
    public static ImmutableArray<RuleChange> Follow(Layer layer, Conflict conflict) => Find(layer, conflict) switch
    {
        OwnRule own => [new DropRule(own.Key)],
        Mend mend => [new Unmend(mend.Key, mend.Path, mend.Add, mend.Drop)],
        _ => [],
    };

    private static LayerPart? Find(Layer layer, Conflict conflict) => conflict.Path is null
        ? layer.Items.FirstOrDefault(i => i.Key == conflict.Key)
        : layer.Mends.FirstOrDefault(m => m.Key == conflict.Key && m.Path == conflict.Path && (m.Now is not null || m.Drop == conflict.WasWhenMended));

    internal MapNode? NodeOf(RuleKey key) => nodes.GetValueOrDefault(key);
}
