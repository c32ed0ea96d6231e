using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShedBot.Knowledge.Loading;
using YamlDotNet.RepresentationModel;

namespace ShedBot.Benchmarks.Rules;

/// <summary>A copy of rule files with ids and phrases of their own, so that a model of any size has the shape of the real one.</summary>
internal static class CopiedRules
{
    private static readonly ImmutableHashSet<string> Copied = ["about", "complaints", "findings", "faults", "checks", "covers", "repairs"];

    /// <param name="ids">The ids that are renamed wherever they stand.</param>
    /// <param name="copy">2 or more; joins the ids and ends the phrases.</param>
    public static IEnumerable<RuleText> Of(IEnumerable<RuleText> files, ImmutableHashSet<string> ids, int copy)
    {
        foreach (var file in files)
        {
            var yaml = new YamlStream();
            yaml.Load(new StringReader(Encoding.UTF8.GetString(file.Bytes.Span)));
            var top = (YamlMappingNode)yaml.Documents[0].RootNode;
            foreach (var section in top.Children.Keys.Where(k => !Copied.Contains(((YamlScalarNode)k).Value!)).ToList()) top.Children.Remove(section);
            if (top.Children.Count < 2) continue;
            Rename(top, ids, string.Create(CultureInfo.InvariantCulture, $"-{copy}"), "");
            using var text = new StringWriter(CultureInfo.InvariantCulture);
            yaml.Save(text, assignAnchors: false);
            yield return RuleText.FromText($"copy-{copy}/{file.Name}", text.ToString());
        }
    }

    private static void Rename(YamlNode node, ImmutableHashSet<string> ids, string suffix, string under)
    {
        switch (node)
        {
            case YamlScalarNode scalar when under == "riders say":
                scalar.Value += $" copy{suffix[1..]}";
                break;
            case YamlScalarNode scalar when ids.Contains(scalar.Value ?? ""):
                scalar.Value += suffix;
                break;
            case YamlSequenceNode list:
                foreach (var item in list.Children) Rename(item, ids, suffix, under);
                break;
            case YamlMappingNode map:
                foreach (var (key, value) in map.Children.ToList())
                {
                    // Facts of the bike and their values keep their names: there is one bike, however many rules.
                    if (under == "moved by") continue;
                    var name = ((YamlScalarNode)key).Value!;
                    Rename(value, ids, suffix, name);
                    if (!ids.Contains(name)) continue;
                    map.Children.Remove(key);
                    map.Children.Add(new YamlScalarNode(name + suffix), value);
                }

                break;
        }
    }
}
