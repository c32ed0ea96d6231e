using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>Makes changes to a layer, one after the other.</summary>
internal sealed class LayerEdit(Layer layer)
{
    private static readonly Node Nowhere = new Scalar("", false, 1, 1);

    private readonly ProblemList problems = new();
    private readonly Dictionary<RuleKey, OwnRule> items = layer.Items.ToDictionary(i => i.Key);
    private readonly Dictionary<(RuleKey, string), Mend> mends = layer.Mends.ToDictionary(m => (m.Key, m.Slot));
    private readonly Dictionary<RuleKey, Retirement> retires = layer.Retires.ToDictionary(r => r.Key);
    private int number;

    public LayerResult Apply(IEnumerable<RuleChange> changes)
    {
        foreach (var change in changes)
        {
            number++;
            if (change.Key.Id is null or { Length: 0 }) Refuse("the change names no rule.");
            else if (Texts(change).OfType<string>().Select(t => HiddenMarks.Find(Clean(t))).FirstOrDefault(h => h is not null) is { } hidden)
                problems.Add(Linting.TextRules.NotText, "change", number, 1, $"{hidden}.", "Take it out: what is read must be what is seen.");
            else Make(change);
        }

        if (problems.HasErrors) return new LayerResult(null, problems.Sorted());

        // Written and read again, so that what was put together is held to all that a file is held to, and has its places in one text.
        var read = Layer.Read(RuleText.FromText(Layer.DefaultFile, new Layer(Layer.DefaultFile, layer.Edition, items.Values, mends.Values, retires.Values).Write()));
        return new LayerResult(read.Layer, read.Problems);
    }

    private static IEnumerable<string?> Texts(RuleChange change) => change switch
    {
        MendValue mend => [mend.Key.Id, mend.Path.Text, mend.Was, mend.Now, .. Texts(mend.Credit)],
        MendList mend => [mend.Key.Id, mend.Path.Text, mend.Add, mend.Drop, .. Texts(mend.Credit)],
        Retire retire => [retire.Key.Id, retire.Because, .. Texts(retire.Credit)],
        _ => [change.Key.Id],
    };

    private static IEnumerable<string?> Texts(Credit credit) => [credit.Author, credit.SaidBy, credit.Source];

    private static string? Cleaned(string? text) => text is null ? null : Clean(text);

    /// <summary>As a file would give it back: no blanks around, one kind of line end.</summary>
    private static string Clean(string text) => text.ReplaceLineEndings("\n").Trim();

    private void Make(RuleChange change)
    {
        switch (change)
        {
            case PutRule put: Put(put); break;
            case DropRule drop:
                if (!items.Remove(drop.Key)) Refuse($"there is no {RuleKinds.Word(drop.Key.Kind)} '{drop.Key.Id}' of the club's own to drop.");
                break;
            case MendValue mend: Value(mend); break;
            case MendList mend: List(mend); break;
            case Unmend unmend:
                var slot = new Mend(unmend.Key, unmend.Path.Tidy(), null, unmend.Add is null && unmend.Drop is null ? "" : null, Cleaned(unmend.Add), Cleaned(unmend.Drop), NoCredit, Empty).Slot;
                if (!mends.Remove((unmend.Key, slot))) Refuse($"'{unmend.Path}' of the {RuleKinds.Word(unmend.Key.Kind)} '{unmend.Key.Id}' is not mended that way.");
                break;
            case Retire retire: Retired(retire); break;
            case Restore restore:
                if (!retires.Remove(restore.Key)) Refuse($"the {RuleKinds.Word(restore.Key.Kind)} '{restore.Key.Id}' is not retired.");
                break;
            default: throw new ArgumentOutOfRangeException(nameof(change), change, "There is no such change.");
        }
    }

    /// <summary>A rule that is written whole takes the place of what was changed of it before.</summary>
    private void Put(PutRule put)
    {
        var text = new ProblemList();
        var name = put.Key.ToString();
        var node = TextGate.Read(RuleText.FromText(name, put.Yaml), text, Layer.MaxBytes) is { } read ? YamlTree.Read(name, read, text) : null;
        if (node is not null) new ShapeCheck(name, text).Check(node, RuleKinds.Shape(put.Key.Kind), "the rule", "");
        foreach (var problem in text.Sorted()) problems.Add(problem.Rule, problem.File, problem.Line, problem.Column, problem.What, problem.Mend);
        if (node is null || text.HasErrors) return;
        var nameKey = RuleKinds.NameKey(put.Key.Kind);
        if (node[nameKey] is not Scalar id || id.Text.Trim() != put.Key.Id)
        {
            problems.Add(LayerRules.Changes, name, node, $"the rule calls itself '{(node[nameKey] as Scalar)?.Text}', and '{put.Key.Id}' was to be written.", "Give it one name.");
            return;
        }

        var own = new OwnRule(put.Key, NoCredit, null, node);
        items[put.Key] = put.InsteadOf is { } print ? own.Over(print) : own;
        retires.Remove(put.Key);
        DropMends(put.Key);
    }

    private void Value(MendValue mend)
    {
        var path = mend.Path.Tidy();
        var shape = NodePath.ShapeAt(LayerShapes.Own(mend.Key.Kind), path);
        if (shape is null or ListShape) Refuse($"'{path}' of a {RuleKinds.Word(mend.Key.Kind)} is no single value.");
        else if (retires.ContainsKey(mend.Key)) Refuse($"the {RuleKinds.Word(mend.Key.Kind)} '{mend.Key.Id}' is retired.");
        else if (items.TryGetValue(mend.Key, out var own)) OwnValue(own, path, mend);
        else if (mends.TryGetValue((mend.Key, $"mend {path}"), out var before)) Again(before, mend);
        else Keep(new Mend(mend.Key, path, Cleaned(mend.Was), Clean(mend.Now), null, null, mend.Credit, Empty));
    }

    private void OwnValue(OwnRule own, RulePath path, MendValue mend)
    {
        var shape = LayerShapes.Own(own.Key.Kind);
        var stands = (NodePath.At(own.Node, shape, path) as Scalar)?.Text.Trim();
        if (stands != Cleaned(mend.Was)) Refuse(ByNow(path, stands));
        else items[own.Key] = Changed(own, NodePath.With(own.Node, shape, path, _ => NodePath.Scalar(Clean(mend.Now), own.Node), own.Node), mend.Credit);
    }

    /// <summary>What the base said when it was first mended stays; back to that, and nothing is mended any more.</summary>
    private void Again(Mend before, MendValue mend)
    {
        var was = Cleaned(mend.Was);
        if (was != before.Now && was != before.Was)
        {
            Refuse(ByNow(before.Path, before.Now));
            return;
        }

        mends.Remove((before.Key, before.Slot));
        if (Clean(mend.Now) != before.Was) Keep(new Mend(mend.Key, before.Path, before.Was, Clean(mend.Now), null, null, mend.Credit, Empty));
    }

    private void List(MendList mend)
    {
        var path = mend.Path.Tidy();
        var (add, drop) = (Cleaned(mend.Add), Cleaned(mend.Drop));
        if ((add is null) == (drop is null)) Refuse("one text is added or dropped at a time.");
        else if (NodePath.ShapeAt(LayerShapes.Own(mend.Key.Kind), path) is not ListShape) Refuse($"'{path}' of a {RuleKinds.Word(mend.Key.Kind)} is no list of texts.");
        else if (retires.ContainsKey(mend.Key)) Refuse($"the {RuleKinds.Word(mend.Key.Kind)} '{mend.Key.Id}' is retired.");
        else if (items.TryGetValue(mend.Key, out var own)) OwnList(own, path, add, drop, mend.Credit);
        else
        {
            var young = new Mend(mend.Key, path, null, null, add, drop, mend.Credit, Empty);

            // Added and dropped again, or dropped and added again: as the base has it.
            if (mends.TryGetValue((young.Key, young.Slot), out var before) && before.Add is null != add is null) mends.Remove((young.Key, young.Slot));
            else Keep(young);
        }
    }

    private void OwnList(OwnRule own, RulePath path, string? add, string? drop, Credit credit)
    {
        var shape = LayerShapes.Own(own.Key.Kind);
        var texts = NodePath.At(own.Node, shape, path) as ListNode ?? new ListNode([], own.Node.Line, own.Node.Column);
        var at = texts.Items.FirstOrDefault(i => i is Scalar s && s.Text.Trim() == (add ?? drop));
        if (add is not null && at is not null) Refuse($"'{add}' stands under '{path}' already.");
        else if (drop is not null && at is null) Refuse($"'{drop}' does not stand under '{path}'.");
        else
            items[own.Key] = Changed(own, NodePath.With(own.Node, shape, path, _ => texts with { Items = add is not null ? texts.Items.Add(NodePath.Scalar(add, own.Node)) : texts.Items.Remove(at!) }, own.Node), credit);
    }

    /// <summary>The rule stays its author's; its date moves on with every change.</summary>
    private static OwnRule Changed(OwnRule own, MapNode node, Credit credit) => new(own.Key, own.Credit, own.InsteadOf,
        NodePath.With(node, LayerShapes.Own(own.Key.Kind), new RulePath("date"), _ => NodePath.Scalar(Day(credit.Date), node), node));

    private void Retired(Retire retire)
    {
        if (items.TryGetValue(retire.Key, out var own) && own.InsteadOf is null)
        {
            Refuse($"the {RuleKinds.Word(retire.Key.Kind)} '{retire.Key.Id}' is the club's own: drop it.");
            return;
        }

        items.Remove(retire.Key);
        DropMends(retire.Key);
        retires[retire.Key] = new Retirement(retire.Key, Clean(retire.Because), retire.Credit, Node(retire.Key, retire.Credit, ("because", Clean(retire.Because))));
    }

    private void DropMends(RuleKey key)
    {
        foreach (var mend in mends.Keys.Where(m => m.Item1 == key).ToList()) mends.Remove(mend);
    }

    private void Keep(Mend mend) => mends[(mend.Key, mend.Slot)] = new Mend(mend.Key, mend.Path, mend.Was, mend.Now, mend.Add, mend.Drop, mend.Credit,
        Node(mend.Key, mend.Credit, ("key", mend.Path.Text), ("was", mend.Was), ("now", mend.Now), ("add", mend.Add), ("drop", mend.Drop)));

    private static MapNode Node(RuleKey key, Credit credit, params ReadOnlySpan<(string Key, string? Text)> texts)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        foreach (var (name, text) in (ReadOnlySpan<(string, string?)>)[
            ("of", RuleKinds.Word(key.Kind)), ("id", key.Id), .. texts,
            ("source", Clean(credit.Source)), ("author", Clean(credit.Author)), ("said by", Cleaned(credit.SaidBy)), ("date", Day(credit.Date))])
        {
            if (text is not null) entries.Add(new Entry(NodePath.Scalar(name, Nowhere), NodePath.Scalar(text, Nowhere)));
        }

        return new MapNode(entries.ToImmutable(), false, 1, 1);
    }

    private void Refuse(string what) => problems.Add(LayerRules.Changes, "change", number, 1, what);

    private static string ByNow(RulePath path, string? stands) => stands is null ? $"nothing stands under '{path}' by now." : $"'{stands}' stands under '{path}' by now.";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Credit NoCredit { get; } = new("", null, "", default);

    private static MapNode Empty { get; } = new([], false, 1, 1);
}
