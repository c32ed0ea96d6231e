using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>Reads a club's file.</summary>
internal sealed class LayerReader(string file, ProblemList problems)
{
    private static readonly string[] CreditKeys = ["source", "author", "date"];

    private readonly Dictionary<(RuleKey, string), LayerPart> seen = [];

    public static LayerRead Read(RuleText file)
    {
        var problems = new ProblemList();
        var layer = TextGate.Read(file, problems, Layer.MaxBytes) is { } text && YamlTree.Read(file.Name, text, problems) is { } root
            ? new LayerReader(file.Name, problems).Whole(root)
            : null;
        return new LayerRead(problems.HasErrors ? null : layer, problems.Sorted());
    }

    private Layer? Whole(MapNode root)
    {
        if (root["before hands on"] is { } triage)
            problems.Add(LayerRules.NotForClubs, file, triage, "the question before hands-on work is the same in every club.", "Take 'before hands on' out of the club's file.");
        if (root["could be either"] is { } either)
            problems.Add(LayerRules.NotForClubs, file, either, "the questions that tell a danger from a mere trouble are the same in every club.", "Take 'could be either' out of the club's file.");
        var parts = root.Entries.Sum(e => e.Value is ListNode list ? list.Items.Length : 0);
        if (parts > Layer.MaxParts)
        {
            problems.Add(LayerRules.TooMany, file, root, $"there are {parts:N0} rules and changes; at most {Layer.MaxParts:N0} are taken.", "Which of them does the club really use?");
            return null;
        }

        new ShapeCheck(file, problems).Check(root with { Entries = root.Entries.RemoveAll(e => e.Key.Text is "before hands on" or "could be either") }, LayerShapes.File, "the file", "");
        if (problems.HasErrors) return null;
        var about = root["about"] as MapNode;
        var items = RuleKinds.All.SelectMany(k => Maps(root, RuleKinds.Section(k)).Select(m => Own(k, m, about))).ToList();
        var mends = Maps(root, "mends").Select(m => Mended(m, about)).OfType<Mend>().ToList();
        var retires = Maps(root, "retires").Select(m => Retired(m, about)).ToList();
        foreach (var part in items.Concat<LayerPart>(mends).Concat(retires)) Once(part);
        foreach (var part in mends.Concat<LayerPart>(retires)) NotOfOwn(part);
        return new Layer(file, Number(about), [.. items], [.. mends], [.. retires]);
    }

    private static IEnumerable<MapNode> Maps(MapNode root, string key) => root[key] is ListNode list ? list.Items.OfType<MapNode>() : [];

    private static int? Number(MapNode? about) =>
        about?["edition"] is Scalar scalar && int.TryParse(scalar.Text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private OwnRule Own(RuleKind kind, MapNode node, MapNode? about)
    {
        var credited = Credited(node, about);
        return new OwnRule(new RuleKey(kind, Text(node, RuleKinds.NameKey(kind)) ?? ""), CreditOf(credited), Text(node, LayerShapes.InsteadOf), credited);
    }

    private Mend? Mended(MapNode node, MapNode? about)
    {
        var (now, add, drop) = (Text(node, "now"), Text(node, "add"), Text(node, "drop"));
        if (new[] { now, add, drop }.Count(t => t is not null) != 1)
        {
            problems.Add(LayerRules.OneChange, file, node, "a mend says one thing: 'now', 'add' or 'drop'.", "Make it several mends.");
            return null;
        }

        if (now is null && node["was"] is { } was)
            problems.Add(LayerRules.OneChange, file, was, "'was' goes with 'now', and not with a list.", "Take it out.");
        var credited = Credited(node, about);
        var path = new RulePath(Text(node, "key") ?? "").Tidy();
        return new Mend(Key(node), path, Text(node, "was"), now, add, drop, CreditOf(credited), credited);
    }

    private Retirement Retired(MapNode node, MapNode? about)
    {
        var credited = Credited(node, about);
        return new Retirement(Key(node), Text(node, "because") ?? "", CreditOf(credited), credited);
    }

    private static RuleKey Key(MapNode node) => new(RuleKinds.TryRead(Text(node, "of") ?? "", out var kind) ? kind : default, Text(node, "id") ?? "");

    /// <summary>Every part carries its own credit, so that it can be taken up into another edition by itself.</summary>
    private static MapNode Credited(MapNode node, MapNode? about) => about is null ? node : node with
    {
        Entries = [.. node.Entries, .. about.Entries.Where(e => CreditKeys.Contains(e.Key.Text) && Text(node, e.Key.Text) is null)],
    };

    private Credit CreditOf(MapNode node)
    {
        foreach (var key in CreditKeys)
        {
            if (Text(node, key) is null)
                problems.Add(Linting.WorkRules.NoOrigin, file, node, $"this has no {key}, and neither has 'about'.", $"Put '{key}:' under 'about' for the whole file, or with it.");
        }

        return new Credit(Text(node, "author") ?? "", Text(node, "said by"), Text(node, "source") ?? "",
            DateOnly.TryParseExact(Text(node, "date"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : default);
    }

    private void Once(LayerPart part)
    {
        if (!seen.TryAdd((part.Key, part.Slot), part))
            problems.Add(LayerRules.Twice, file, part.Node, $"{part} stands twice; the first is on line {seen[(part.Key, part.Slot)].Line}.", "Take one out.");
    }

    private void NotOfOwn(LayerPart part)
    {
        if (seen.ContainsKey((part.Key, "own rule")))
            problems.Add(LayerRules.Twice, file, part.Node, $"the club has a {RuleKinds.Word(part.Key.Kind)} '{part.Key.Id}' of its own; {(part is Mend ? "a mend is for rules of the base" : "there is nothing to retire")}.", "Change the club's own rule itself.");
        else if (part is Mend && seen.ContainsKey((part.Key, "retired")))
            problems.Add(LayerRules.Twice, file, part.Node, $"the {RuleKinds.Word(part.Key.Kind)} '{part.Key.Id}' is retired and mended.", "Take one of the two out.");
    }

    private static string? Text(MapNode node, string key) => node[key] is Scalar { Text: var text } && text.Trim() is { Length: > 0 } kept ? kept : null;
}
