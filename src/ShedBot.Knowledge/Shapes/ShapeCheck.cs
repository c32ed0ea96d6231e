using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Shapes;

/// <summary>Holds a rule file against the tables of its format and tells everything that does not fit.</summary>
internal sealed partial class ShapeCheck(string file, ProblemList problems)
{
    /// <param name="whose">Who the value belongs to, for the report: the check 'watch-arm'.</param>
    /// <param name="key">The key it stands behind.</param>
    public void Check(Node node, Shape shape, string whose, string key)
    {
        switch (shape)
        {
            case ItemShape item when node is MapNode map: Item(map, item); break;
            case ItemShape: Wrong(node, whose, key, "'key: value' lines"); break;
            case ListShape list: List(node, list, whose, key); break;
            case MapShape pairs: Pairs(node, pairs, whose, key); break;
            default:
                if (node is Scalar value) Value(value, shape, whose, key);
                else Wrong(node, whose, key, "a single value");
                break;
        }
    }

    private void Item(MapNode map, ItemShape item)
    {
        var id = map["id"] is Scalar { Text.Length: > 0 } name ? $" '{name.Text}'" : "";
        var whose = $"{(item.Kind is "about" or "rule file" ? "the" : id.Length > 0 ? "the" : "this")} {item.Kind}{id}";
        foreach (var entry in map.Entries)
        {
            if (item.Keys.FirstOrDefault(k => k.Name == entry.Key.Text) is not { } key)
            {
                problems.Add(ShapeRules.UnknownKey, file, entry.Key, $"{whose} has the unknown key '{Short(entry.Key.Text)}'.",
                    map.Flow && entry.Value.IsEmpty
                        ? "In braces a comma ends a text: put the text before it in quotes."
                        : item.Instead.GetValueOrDefault(entry.Key.Text) ?? Nearest.AskOrList(entry.Key.Text, [.. item.Keys.Select(k => k.Name)]));
            }
            else if (!entry.Value.IsEmpty || key.Shape is not (ListShape { AtLeast: 0 } or MapShape { AtLeast: 0 }))
            {
                Check(entry.Value, key.Shape, whose, key.Name);
            }
        }

        foreach (var key in item.Keys.Where(k => k.Required && map[k.Name] is null))
            problems.Add(ShapeRules.MissingKey, file, map, $"{whose} has no '{key.Name}'.", key.Shape.Doc);
    }

    private void List(Node node, ListShape list, string whose, string key)
    {
        if (node is not ListNode items)
        {
            Wrong(node, whose, key, "a list ('- ' lines)");
            return;
        }

        if (items.Items.Length < list.AtLeast)
            problems.Add(ShapeRules.TooFew, file, node, $"'{key}' of {whose} has {items.Items.Length} of at least {list.AtLeast}.", list.Doc);
        foreach (var item in items.Items) Check(item, list.Item, whose, key);
    }

    private void Pairs(Node node, MapShape pairs, string whose, string key)
    {
        if (node is not MapNode map)
        {
            Wrong(node, whose, key, "'id: value' lines");
            return;
        }

        if (map.Entries.Length < pairs.AtLeast)
            problems.Add(ShapeRules.TooFew, file, node, $"'{key}' of {whose} has {map.Entries.Length} of at least {pairs.AtLeast}.", pairs.Doc);
        foreach (var entry in map.Entries)
        {
            if (map.Flow && entry.Value.IsEmpty)
                problems.Add(ShapeRules.EmptyText, file, entry.Key, $"'{Short(entry.Key.Text)}' in '{key}' of {whose} has no value.", "In braces a comma ends a text: put the text before it in quotes.");
            else
                Check(entry.Value, pairs.Value, whose, entry.Key.Text);
        }
    }

    private void Value(Scalar value, Shape shape, string whose, string key)
    {
        var text = value.Text.Trim();
        if (text.Length == 0)
        {
            problems.Add(ShapeRules.EmptyText, file, value, $"'{key}' of {whose} is empty.", shape.Doc);
            return;
        }

        switch (shape)
        {
            case TextShape when text.Length > TextShape.MaxLength:
                problems.Add(ShapeRules.TooLong, file, value, $"'{key}' of {whose} has {text.Length} characters; at most {TextShape.MaxLength} are taken.", "Split it.");
                break;
            case IdShape when text.Length > IdShape.MaxLength || !IdForm().IsMatch(text):
                problems.Add(ShapeRules.BadId, file, value, $"'{Short(text)}' is no id.", "An id is lower-case words with hyphens between: clutch-arm.");
                break;
            case WordShape words when !words.Words.Contains(text):
                problems.Add(ShapeRules.UnknownWord, file, value, $"'{Short(text)}' is no word for '{key}' of {whose}.",
                    Nearest.Ask(text, words.Words) is { Length: > 0 } near ? $"{near} It can be: {string.Join(", ", words.Words)}." : $"It can be: {string.Join(", ", words.Words)}.");
                break;
            case NumberShape number:
                Number(value, text, number, whose, key);
                break;
            case IntervalShape when !IntervalWords.TryRead(text, out _):
                problems.Add(ServiceRules.NoInterval, file, value, $"'{Short(text)}' under '{key}' of {whose} is no interval.", IntervalWords.Instead(text));
                break;
            case DateShape when !DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _):
                problems.Add(ShapeRules.BadDate, file, value, $"'{Short(text)}' is no date.", "Write it like 2026-03-31.");
                break;
        }
    }

    private void Number(Scalar value, string text, NumberShape shape, string whose, string key)
    {
        const NumberStyles Plain = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;
        if (!double.TryParse(text, Plain, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            problems.Add(ShapeRules.BadNumber, file, value, $"'{key}' of {whose} is '{Short(text)}', which is no number.", shape.Doc);
        else if (number < shape.Min || number > shape.Max)
            problems.Add(ShapeRules.BadNumber, file, value, FormattableString.Invariant($"'{key}' of {whose} is {number}; it must be from {shape.Min} to {shape.Max}."), shape.Doc);
        else if (shape.Whole && number != Math.Floor(number))
            problems.Add(ShapeRules.BadNumber, file, value, FormattableString.Invariant($"'{key}' of {whose} is {number}; it must be a whole number."), shape.Doc);
    }

    private void Wrong(Node node, string whose, string key, string expected) =>
        problems.Add(ShapeRules.WrongKind, file, node, $"'{Short(key)}' of {whose} must be {expected}, and {Name(node)} stands there.",
            node is MapNode && expected == "a single value" ? "A text with ': ' in it must be in quotes." : "");

    private static string Name(Node node) => node switch
    {
        ListNode => "a list",
        MapNode => "a map of 'key: value'",
        _ => node.IsEmpty ? "nothing" : "a single value",
    };

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";

    [GeneratedRegex(IdShape.Pattern, RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex IdForm();
}
