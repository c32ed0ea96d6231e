namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Which component may stand where. Source: the platform's component reference.</summary>
internal static class PlacementRules
{
    /// <param name="newStyle">Whether the message is flagged as built of components only; null when the request does not tell (an edit).</param>
    public static IEnumerable<string> InMessage(Node node, bool? newStyle)
    {
        var fits = (node.Parent, node.Slot) switch
        {
            (null, _) => node.Kind is Kind.Row
                || (newStyle is not false && node.Kind is Kind.Section or Kind.Text or Kind.Gallery or Kind.File or Kind.Line or Kind.Container),
            (Kind.Row, "components") => node.Kind is Kind.Button || Kind.IsSelect(node.Kind),
            (Kind.Section, "components") => node.Kind is Kind.Text,
            (Kind.Section, "accessory") => node.Kind is Kind.Button or Kind.Thumbnail,
            (Kind.Container, "components") => node.Kind is Kind.Row or Kind.Section or Kind.Text or Kind.Gallery or Kind.File or Kind.Line,
            _ => false,
        };
        return fits ? [] : [Misplaced(node)];
    }

    /// <param name="ours">Whether the older rows of text inputs, which the platform advises against, are refused too.</param>
    public static IEnumerable<string> InModal(Node node, bool ours)
    {
        var fits = (node.Parent, node.Slot) switch
        {
            (null, _) => node.Kind is Kind.Label or Kind.Text || (!ours && node.Kind is Kind.Row),
            (Kind.Row, "components") => node.Kind is Kind.TextInput,
            (Kind.Label, "component") => Kind.IsActedOn(node.Kind) && node.Kind is not Kind.Button,
            _ => false,
        };
        return fits ? [] : [Misplaced(node)];
    }

    private static string Misplaced(Node node) =>
        $"{node.At}type: kind {node.Kind?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "(none)"} may not stand here";
}
