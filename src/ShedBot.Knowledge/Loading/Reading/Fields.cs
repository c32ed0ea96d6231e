using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>Reads the values of one item. What does not fit was told by the shape check; here it becomes an empty value.</summary>
/// <param name="about">The file's <c>about:</c>, for what the item does not say itself.</param>
internal sealed class Fields(MapNode node, string file, MapNode? about)
{
    public MapNode Node => node;

    public string Id => Text("id");

    public string Text(string key) => TextOrNull(key) ?? "";

    public string? TextOrNull(string key) => node[key] is Scalar { Text: var text } && text.Trim() is { Length: > 0 } kept ? kept : null;

    public string Word(string key, string otherwise) => TextOrNull(key) ?? otherwise;

    public bool YesNo(string key) => TextOrNull(key) == "yes";

    public double Number(string key) =>
        double.TryParse(TextOrNull(key), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : 0;

    public ImmutableArray<string> Texts(string key) =>
        node[key] is ListNode list ? [.. list.Items.OfType<Scalar>().Select(s => s.Text.Trim()).Where(t => t.Length > 0)] : [];

    public ImmutableArray<T> Items<T>(string key, Func<Fields, T> read) =>
        node[key] is ListNode list ? [.. list.Items.OfType<MapNode>().Select(m => read(Within(m)))] : [];

    public T Item<T>(string key, Func<Fields, T> read) => read(Within(node[key] as MapNode ?? new MapNode([], false, node.Line, node.Column)));

    public ImmutableDictionary<string, string> Pairs(string key) => PairsOf(node[key]);

    public ImmutableDictionary<string, ImmutableDictionary<string, string>> NestedPairs(string key) => node[key] is MapNode map
        ? map.Entries.ToImmutableDictionary(e => e.Key.Text, e => PairsOf(e.Value), StringComparer.Ordinal)
        : ImmutableDictionary<string, ImmutableDictionary<string, string>>.Empty;

    public Origin Origin() => new(Own("source"), Own("author"), Day(Own("date")), node.File ?? file, node.Line, TextOrNull("said by"));

    private string Own(string key) => TextOrNull(key) ?? (about?[key] as Scalar)?.Text.Trim() ?? "";

    private static DateOnly Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : default;

    private Fields Within(MapNode inner) => new(inner, file, about);

    private static ImmutableDictionary<string, string> PairsOf(Node? at) => at is MapNode map
        ? map.Entries.Where(e => e.Value is Scalar).ToImmutableDictionary(e => e.Key.Text, e => ((Scalar)e.Value).Text.Trim(), StringComparer.Ordinal)
        : ImmutableDictionary<string, string>.Empty;
}
