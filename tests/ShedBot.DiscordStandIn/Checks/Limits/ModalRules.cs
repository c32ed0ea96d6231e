using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>A modal as a whole. Source: the platform's pages on receiving and responding to interactions; five components at the top is
/// the page's figure, the published description allows more.</summary>
internal static class ModalRules
{
    public static IEnumerable<string> Of(JsonElement modal, bool ours, string at)
    {
        var nodes = Tree.Of(modal, at);
        var top = modal.Items("components").Count;
        return
        [
            .. Bounds.Needed(modal, "custom_id", 1, 100, at),
            .. Bounds.Needed(modal, "title", 1, 45, at),
            .. top is >= 1 and <= 5 ? [] : new[] { $"{at}components: 1 to 5 of them, not {top}" },
            .. nodes.SelectMany(node => PlacementRules.InModal(node, ours)),
            .. nodes.SelectMany(FormRules.Of),
            .. ComponentRules.Names(nodes, at),
        ];
    }
}
