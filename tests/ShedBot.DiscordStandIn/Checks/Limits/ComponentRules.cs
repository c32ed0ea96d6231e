using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The components of a message, one by one and taken together. Source: the platform's component reference; the 4000 characters
/// over all texts are known from its issue threads, not from the page.</summary>
internal static class ComponentRules
{
    private const int MostComponents = 40, MostRows = 5, MostText = 4000;

    /// <param name="newStyle">See <see cref="PlacementRules.InMessage"/>.</param>
    public static IEnumerable<string> InMessage(JsonElement message, bool? newStyle, string at)
    {
        var nodes = Tree.Of(message, at);
        var rows = nodes.Count(node => node.Parent is null && node.Kind is Kind.Row);
        var text = nodes.Where(node => node.Kind is Kind.Text).Sum(node => node.Component.Text("content")?.Length ?? 0);
        return
        [
            .. nodes.SelectMany(node => PlacementRules.InMessage(node, newStyle)),
            .. nodes.SelectMany(Own),
            .. Names(nodes, at),
            .. nodes.Count > MostComponents ? new[] { $"{at}components: at most {MostComponents} counting nested ones, not {nodes.Count}" } : [],
            .. newStyle is false && rows > MostRows ? new[] { $"{at}components: at most {MostRows} rows, not {rows}" } : [],
            .. text > MostText ? new[] { $"{at}components: at most {MostText} characters over all texts, not {text}" } : [],
        ];
    }

    /// <summary>What names a component must be unique within its message or modal.</summary>
    public static IEnumerable<string> Names(IReadOnlyList<Node> nodes, string at)
    {
        foreach (var twice in Twice(nodes.Select(node => node.Component.Text("custom_id")).OfType<string>()))
            yield return $"{at}components: the custom_id '{twice}' is used twice";
        foreach (var twice in Twice(nodes.Select(node => node.Component.Whole("id")).Where(id => id is > 0).Select(id => $"{id}")))
            yield return $"{at}components: the id {twice} is used twice";
    }

    private static IEnumerable<string> Own(Node node) => node.Kind switch
    {
        Kind.Button => ButtonRules.Of(node.Component, node.At),
        var kind when Kind.IsSelect(kind) => SelectRules.Of(node.Component, kind, node.At),
        _ => LayoutRules.Of(node.Component, node.Kind, node.At),
    };

    private static IEnumerable<string> Twice(IEnumerable<string> names) =>
        names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key);
}
