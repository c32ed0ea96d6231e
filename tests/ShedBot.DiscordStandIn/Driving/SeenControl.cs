using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Driving;

/// <summary>A button or a menu on a message.</summary>
/// <param name="Kind">The component type: 2 button, 3 and 5 to 8 menus.</param>
/// <param name="CustomId">Null for a link.</param>
/// <param name="Label">A button's label, a menu's placeholder.</param>
/// <param name="Style">A button's style, 1 to 6; 0 for a menu.</param>
/// <param name="Choices">A menu's own choices.</param>
public sealed record SeenControl(int Kind, int PartId, string? CustomId, string Label, int Style, string? Url, bool Disabled, IReadOnlyList<SeenChoice> Choices)
{
    internal static SeenControl? Of(JsonObject part)
    {
        var kind = ComponentTree.TypeOf(part);
        if (kind is not (2 or 3 or 5 or 6 or 7 or 8))
            return null;
        return new SeenControl(
            kind,
            part["id"]?.GetValue<int>() ?? 0,
            ComponentTree.TextOf(part, "custom_id"),
            ComponentTree.TextOf(part, kind == 2 ? "label" : "placeholder") ?? "",
            kind == 2 ? part["style"]?.GetValue<int>() ?? 0 : 0,
            ComponentTree.TextOf(part, "url"),
            part["disabled"]?.GetValue<bool>() == true,
            [.. (part["options"] as JsonArray ?? []).OfType<JsonObject>().Select(Choice)]);
    }

    private static SeenChoice Choice(JsonObject o) =>
        new(ComponentTree.TextOf(o, "label") ?? "", ComponentTree.TextOf(o, "value") ?? "", ComponentTree.TextOf(o, "description"), o["default"]?.GetValue<bool>() == true);
}

/// <summary>One choice of a menu.</summary>
public sealed record SeenChoice(string Label, string Value, string? Description, bool Chosen);
