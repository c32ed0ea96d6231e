using System.Text;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>One rule as text in the format of rule files. What has nothing behind it is left out.</summary>
/// <remarks>Texts are written in quotes and maps in braces, which any reader of YAML takes; the layer writes it in its own plain way when it keeps it.</remarks>
internal sealed class RuleItem
{
    private readonly List<(string Key, string Value)> entries = [];

    public RuleItem Add(string key, string? text)
    {
        if (!string.IsNullOrWhiteSpace(text)) entries.Add((key, Quoted(text.Trim())));
        return this;
    }

    public RuleItem Add(string key, double number) => Add(key, number.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture));

    public RuleItem Add(string key, IEnumerable<string> texts)
    {
        var list = texts.Select(t => Quoted(t.Trim())).ToList();
        if (list.Count > 0) entries.Add((key, $"[{string.Join(", ", list)}]"));
        return this;
    }

    public RuleItem Add(string key, RuleItem inner)
    {
        if (inner.entries.Count > 0) entries.Add((key, inner.ToString()));
        return this;
    }

    public RuleItem Add(string key, IEnumerable<RuleItem> items)
    {
        var list = items.Where(i => i.entries.Count > 0).Select(i => i.ToString()).ToList();
        if (list.Count > 0) entries.Add((key, $"[{string.Join(", ", list)}]"));
        return this;
    }

    public override string ToString() => $"{{{string.Join(", ", entries.Select(e => $"{Quoted(e.Key)}: {e.Value}"))}}}";

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder(text.Length + 2).Append('"');
        foreach (var c in text)
            quoted.Append(c switch { '"' => "\\\"", '\\' => "\\\\", '\n' => "\\n", _ => c.ToString() });
        return quoted.Append('"').ToString();
    }
}
