using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>One component of a message or modal, and where it stands.</summary>
/// <param name="At">Its place with a full stop behind, as <c>components[0].components[2].</c></param>
/// <param name="Parent">The kind it stands in; null at the top.</param>
/// <param name="Slot">The parent's field it stands in: <c>components</c>, <c>accessory</c> or <c>component</c>.</param>
internal sealed record Node(JsonElement Component, string At, long? Parent, string Slot)
{
    public long? Kind => Component.Whole("type");
}

/// <summary>Every component of a message or modal, parents before children.</summary>
internal static class Tree
{
    // The deepest legal nesting is three (a button in a row in a container); what lies deeper stands under something misplaced already.
    private const int Deepest = 8;

    public static IReadOnlyList<Node> Of(JsonElement holder, string at) => [.. Under(holder, at, null, Deepest)];

    private static IEnumerable<Node> Under(JsonElement holder, string at, long? parent, int left)
    {
        if (left == 0) yield break;
        foreach (var (component, place, slot) in Children(holder, at))
        {
            var node = new Node(component, place, parent, slot);
            yield return node;
            foreach (var below in Under(component, place, node.Kind, left - 1)) yield return below;
        }
    }

    private static IEnumerable<(JsonElement, string, string)> Children(JsonElement holder, string at)
    {
        foreach (var (index, item) in holder.Items("components").Index()) yield return (item, $"{at}components[{index}].", "components");
        if (holder.Field("accessory") is { } accessory) yield return (accessory, $"{at}accessory.", "accessory");
        if (holder.Field("component") is { } labelled) yield return (labelled, $"{at}component.", "component");
    }
}
