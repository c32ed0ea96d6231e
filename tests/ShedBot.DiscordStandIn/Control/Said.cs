using System.Globalization;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.Control;

/// <summary>What a control request says, by name. Ids and numbers may be text.</summary>
internal sealed record Said(JsonObject Body)
{
    public string Text(string name) => Maybe(name) ?? throw new ArgumentException($"'{name}' is needed.");

    public string? Maybe(string name) => Body[name] is JsonValue value ? value.ToString() : null;

    public ulong Id(string name) => ulong.Parse(Text(name), CultureInfo.InvariantCulture);

    public int Number(string name, int otherwise) => Maybe(name) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;

    public bool Flag(string name, bool otherwise) => Maybe(name) is { } text ? text is "true" or "True" or "1" : otherwise;

    public string[] List(string name) => [.. (Body[name] as JsonArray ?? []).Select(v => v!.ToString())];
}
