using System.Collections.Immutable;
using ShedBot.Knowledge.Layers.Safety;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>Lays the parts of a layer over the base, one by one, and tells which do not fit.</summary>
internal sealed class Laying(RuleBase under, Layer layer, ProblemList problems)
{
    private readonly Dictionary<RuleKey, MapNode?> changed = [];
    private readonly HashSet<RuleKey> own = [];
    private readonly ImmutableArray<Conflict>.Builder conflicts = ImmutableArray.CreateBuilder<Conflict>();
    private readonly ImmutableArray<AlsoGone>.Builder gone = ImmutableArray.CreateBuilder<AlsoGone>();

    /// <param name="Draft">All rules of the club.</param>
    public sealed record Result(Draft Draft, ImmutableArray<Conflict> Conflicts, ImmutableArray<AlsoGone> Gone);

    /// <param name="without">Parts that are left out.</param>
    public Result Lay(IReadOnlySet<LayerPart> without)
    {
        foreach (var item in layer.Items.Where(i => !without.Contains(i))) Own(item);
        foreach (var retired in layer.Retires.Where(r => !without.Contains(r))) Gone(retired);
        foreach (var mend in layer.Mends.Where(m => !without.Contains(m))) Mended(mend);
        foreach (var (key, node) in changed.ToList())
        {
            if (node is not null && !own.Contains(key)) new ShapeCheck(layer.File, problems).Check(node, RuleKinds.Shape(key.Kind), "the rule", "");
        }

        new Cascade(under, changed, own, gone).Run(layer.Retires.Where(r => !without.Contains(r)).Select(r => r.Key));
        return new Result(new LayeredDraft(under, layer.File, changed, own).Build(), conflicts.ToImmutable(), gone.ToImmutable());
    }

    private void Own(OwnRule item)
    {
        changed[item.Key] = item.Node;
        own.Add(item.Key);
        if (under.FingerprintOf(item.Key) is { } now && now != item.InsteadOf) conflicts.Add(new Conflict(item.Key, null, item.InsteadOf, now, "its own rule"));
    }

    private void Gone(Retirement retired)
    {
        if (retired.Key.Kind == RuleKind.Emergency && under.Has(retired.Key))
            problems.Add(SafetyRules.Emergency, layer.File, retired.Node, $"the emergency '{retired.Key.Id}' comes before any coaching in every club.", "It cannot be retired.");
        else if (retired.Key.Kind == RuleKind.Complaint && under.Draft.Eithers.Any(e => e.Rule.Answers.Any(a => a.Means == retired.Key.Id)))
            problems.Add(LayerRules.NotForClubs, layer.File, retired.Node, $"the complaint '{retired.Key.Id}' is asked for in every club, to tell it from a danger.", "It cannot be retired.");
        else if (under.Has(retired.Key)) changed[retired.Key] = null;
        else problems.Add(LayerRules.NoTarget, layer.File, retired.Node, $"the base has no {RuleKinds.Word(retired.Key.Kind)} '{retired.Key.Id}' to retire.");
    }

    private void Mended(Mend mend)
    {
        var shape = RuleKinds.Shape(mend.Key.Kind);
        var end = NodePath.ShapeAt(shape, mend.Path);
        if (under.NodeOf(mend.Key) is not { } first)
            problems.Add(LayerRules.NoTarget, layer.File, mend.Node, $"the base has no {RuleKinds.Word(mend.Key.Kind)} '{mend.Key.Id}' to mend.");
        else if (end is null || mend.Now is null != end is ListShape)
            problems.Add(LayerRules.NoPath, layer.File, mend.Node, $"'{mend.Path}' of a {RuleKinds.Word(mend.Key.Kind)} is no {(mend.Now is null ? "list of texts" : "single value")} that can be mended.");
        else if (mend.Now is not null)
            Value(mend, first, shape);
        else
            List(mend, first, shape);
    }

    private void Value(Mend mend, MapNode first, ItemShape shape)
    {
        var stands = (NodePath.At(first, shape, mend.Path) as Scalar)?.Text.Trim();
        if (stands == mend.Now)
        {
            problems.Add(LayerRules.IdleMend, layer.File, mend.Node, $"'{mend.Path}' of the {RuleKinds.Word(mend.Key.Kind)} '{mend.Key.Id}' is '{mend.Now}' in the base already.", "Take the mend out.");
            return;
        }

        if (stands != mend.Was) conflicts.Add(new Conflict(mend.Key, mend.Path, mend.Was, stands, $"'{mend.Now}'"));
        changed[mend.Key] = NodePath.With(changed.GetValueOrDefault(mend.Key) ?? first, shape, mend.Path, _ => mend.Node["now"]!, mend.Node);
    }

    private void List(Mend mend, MapNode first, ItemShape shape)
    {
        var node = changed.GetValueOrDefault(mend.Key) ?? first;
        var texts = NodePath.At(node, shape, mend.Path) as ListNode ?? new ListNode([], mend.Node.Line, mend.Node.Column) { File = layer.File };
        var at = texts.Items.FirstOrDefault(i => i is Scalar s && s.Text.Trim() == (mend.Add ?? mend.Drop));
        if (mend.Add is not null && at is not null)
        {
            problems.Add(LayerRules.IdleMend, layer.File, mend.Node, $"'{mend.Add}' stands under '{mend.Path}' of the {RuleKinds.Word(mend.Key.Kind)} '{mend.Key.Id}' already.", "Take the mend out.");
            return;
        }

        if (mend.Drop is not null && at is null)
        {
            conflicts.Add(new Conflict(mend.Key, mend.Path, mend.Drop, null, $"without '{mend.Drop}'"));
            return;
        }

        changed[mend.Key] = NodePath.With(node, shape, mend.Path,
            _ => texts with { Items = mend.Add is not null ? texts.Items.Add(mend.Node["add"]!) : texts.Items.Remove(at!) }, mend.Node);
    }
}
