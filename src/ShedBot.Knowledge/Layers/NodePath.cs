using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>Finds and changes one value inside a rule as written. What is not touched stays the same object, with its place.</summary>
internal static class NodePath
{
    private static readonly string[] Fixed = ["id", "concept", LayerShapes.InsteadOf, .. PartShapes.OriginKeys.Select(k => k.Name)];

    /// <summary>What may stand at the end of the way: a single value or a list of texts. Null when a mend cannot go there.</summary>
    public static Shape? ShapeAt(ItemShape rule, RulePath path)
    {
        Shape? at = rule;
        var parts = path.Parts;
        foreach (var part in parts)
        {
            at = at switch
            {
                ItemShape item => item.Keys.FirstOrDefault(k => k.Name == part)?.Shape,
                MapShape pairs => pairs.Value,
                ListShape { Item: ItemShape item } when Chooser(item) is not null => item,
                _ => null,
            };
        }

        return parts.IsEmpty || Fixed.Contains(parts[^1]) || at is ItemShape or MapShape or ListShape { Item: ItemShape } ? null : at;
    }

    /// <summary>What stands at the end of the way; null when nothing does.</summary>
    public static Node? At(MapNode rule, ItemShape shape, RulePath path)
    {
        Node? at = rule;
        Shape? here = shape;
        foreach (var part in path.Parts)
        {
            (at, here) = (at, here) switch
            {
                (MapNode map, ItemShape item) => (map[part], item.Keys.FirstOrDefault(k => k.Name == part)?.Shape),
                (MapNode map, MapShape pairs) => (map[part], pairs.Value),
                (ListNode list, ListShape { Item: ItemShape item }) => (list.Items.FirstOrDefault(i => IsCalled(i, item, part)), (Shape?)item),
                _ => (null, null),
            };
        }

        return at is null || at.IsEmpty ? null : at;
    }

    /// <summary>The rule with another value at the end of the way; what is missing on the way is made.</summary>
    /// <param name="change">From what stands there, or null, to what is to stand there.</param>
    /// <param name="place">Where new nodes are said to stand.</param>
    public static MapNode With(MapNode rule, ItemShape shape, RulePath path, Func<Node?, Node> change, Node place) =>
        (MapNode)Within(rule, shape, path.Parts.AsSpan(), change, place);

    private static Node Within(Node? at, Shape? shape, ReadOnlySpan<string> parts, Func<Node?, Node> change, Node place)
    {
        if (parts.IsEmpty) return change(at is { IsEmpty: true } ? null : at);
        var part = parts[0];
        switch (shape)
        {
            case ListShape { Item: ItemShape item }:
                var list = at as ListNode ?? new ListNode([], place.Line, place.Column) { File = place.File };
                var chosen = list.Items.FirstOrDefault(i => IsCalled(i, item, part));
                var into = Within(chosen ?? Called(item, part, place), item, parts[1..], change, place);
                return list with { Items = chosen is null ? list.Items.Add(into) : list.Items.Replace(chosen, into, ReferenceEqualityComparer.Instance) };
            default:
                var map = at as MapNode ?? new MapNode([], false, place.Line, place.Column) { File = place.File };
                var inner = shape is ItemShape known ? known.Keys.FirstOrDefault(k => k.Name == part)?.Shape : (shape as MapShape)?.Value;
                var value = Within(map[part], inner, parts[1..], change, place);
                var index = -1;
                for (var i = 0; i < map.Entries.Length && index < 0; i++)
                {
                    if (map.Entries[i].Key.Text == part) index = i;
                }

                return map with
                {
                    Entries = index < 0
                        ? map.Entries.Add(new Entry(Scalar(part, place), value))
                        : map.Entries.SetItem(index, parts.Length == 1 ? new Entry(Scalar(part, place), value) : map.Entries[index] with { Value = value }),
                };
        }
    }

    public static Scalar Scalar(string text, Node place) => new(text, Quoted: true, place.Line, place.Column) { File = place.File };

    /// <summary>The keys by which items of such a list are told apart; null when they are not.</summary>
    private static ImmutableArray<string>? Chooser(ItemShape item) =>
        item.Keys.Any(k => k.Name == "id") ? ["id"]
        : item.Keys.FirstOrDefault(k => k.Name == "is") is { } value && item.Keys.Any(k => k.Name == "fact") ? value.Shape is IdShape ? ["fact", "is"] : ["fact"]
        : null;

    private static bool IsCalled(Node node, ItemShape item, string name) =>
        node is MapNode map && Chooser(item) is { } keys && string.Join(' ', keys.Select(k => (map[k] as Scalar)?.Text.Trim())) == name;

    private static MapNode Called(ItemShape item, string name, Node place)
    {
        var keys = Chooser(item) ?? [];
        var names = name.Split(' ', keys.Length);
        return new MapNode([.. keys.Zip(names, (k, n) => new Entry(Scalar(k, place), Scalar(n, place)))], false, place.Line, place.Column) { File = place.File };
    }
}
