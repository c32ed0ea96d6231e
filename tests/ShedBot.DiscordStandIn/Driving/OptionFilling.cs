using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Driving;

/// <summary>Makes the options of a command as an app sends them, and refuses what an app would not let through.</summary>
internal static class OptionFilling
{
    private const int SubCommand = 1, Group = 2;

    /// <param name="partial">A completion: required options may be missing and the value is in the making.</param>
    public static JsonArray Fill(JsonObject command, string[] path, IReadOnlyDictionary<string, object> values, bool partial)
    {
        var offered = (command["options"] as JsonArray ?? []).OfType<JsonObject>().ToList();
        if (path.Length > 0)
        {
            var sub = offered.Find(o => Name(o) == path[0] && ComponentTree.TypeOf(o) is SubCommand or Group)
                ?? throw new InvalidOperationException($"'{Name(command)}' has no '{path[0]}'.");
            return new JsonArray(new JsonObject { ["name"] = path[0], ["type"] = ComponentTree.TypeOf(sub), ["options"] = Fill(sub, path[1..], values, partial) });
        }
        if (offered.Exists(o => ComponentTree.TypeOf(o) is SubCommand or Group))
            throw new InvalidOperationException($"'{Name(command)}' cannot be used without one of its sub-commands.");
        var unknown = values.Keys.Except(offered.Select(Name)).FirstOrDefault();
        if (unknown is not null)
            throw new InvalidOperationException($"'{Name(command)}' has no option '{unknown}'.");
        if (!partial && offered.Find(o => o["required"]?.GetValue<bool>() == true && !values.ContainsKey(Name(o))) is { } missing)
            throw new InvalidOperationException($"'{Name(command)}' needs '{Name(missing)}'.");
        return Wire.ArrayOf(offered.Where(o => values.ContainsKey(Name(o))).Select(o => (JsonNode)Filled(o, values[Name(o)], partial)));
    }

    /// <summary>The id of a value that stands for something; null for plain ones.</summary>
    public static ulong? IdOf(object value) => value switch
    {
        Person p => p.Id,
        Channel c => c.Id,
        Role r => r.Id,
        SentFile f => f.Id,
        _ => null,
    };

    private static string Name(JsonObject part) => part["name"]!.ToString();

    private static JsonObject Filled(JsonObject option, object value, bool partial)
    {
        var filled = new JsonObject
        {
            ["name"] = Name(option),
            ["type"] = ComponentTree.TypeOf(option),
            ["value"] = value switch
            {
                string text => text,
                bool flag => flag,
                int whole => whole,
                long whole => whole,
                double number => number,
                _ => IdOf(value)?.Text() ?? throw new InvalidOperationException($"'{Name(option)}' cannot be a {value.GetType().Name}."),
            },
        };
        if (partial)
            filled["focused"] = true;
        else if (option["choices"] is JsonArray { Count: > 0 } choices && choices.All(c => c!["value"]!.ToString() != filled["value"]!.ToString()))
            throw new InvalidOperationException($"'{value}' is not offered by '{Name(option)}'.");
        return filled;
    }
}
