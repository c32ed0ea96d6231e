using System.Text.Json;

namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>One labelled message; the fields are told in the README beside the files.</summary>
internal sealed record RiderMessage(
    string Text,
    string Kind,
    IReadOnlyList<string> Complaints,
    IReadOnlyList<string> AlsoOk,
    IReadOnlyList<string> Denied,
    string? Emergency,
    IReadOnlyList<string> EmergencyAlsoOk,
    string? HowTo,
    IReadOnlyList<string> HowToAlsoOk,
    bool? NotMine,
    IReadOnlyList<(string, string)> Findings,
    IReadOnlyList<(string, string)> FindingsAlsoOk,
    string? Either)
{
    public static List<RiderMessage> Read(string file) =>
        [.. File.ReadLines(Path.Combine(Shipped.Root, "tests", "ShedBot.Knowledge.Tests", "Understanding", file))
            .Where(l => l.Length > 0)
            .Select(l => Of(JsonDocument.Parse(l).RootElement))];

    private static RiderMessage Of(JsonElement line) => new(
        line.GetProperty("text").GetString()!,
        line.GetProperty("kind").GetString()!,
        Names(line, "complaints"),
        Names(line, "also_ok"),
        Names(line, "denied"),
        line.GetProperty("emergency").GetString(),
        Names(line, "emergency_also_ok"),
        line.GetProperty("how_to").GetString(),
        Names(line, "how_to_also_ok"),
        line.GetProperty("not_mine") is { ValueKind: JsonValueKind.True or JsonValueKind.False } yesOrNo ? yesOrNo.GetBoolean() : null,
        line.TryGetProperty("findings", out var found) ? [.. found.EnumerateObject().Select(p => (p.Name, p.Value.GetString()!))] : [],
        line.TryGetProperty("findings_also_ok", out var also)
            ? [.. also.EnumerateObject().SelectMany(p => p.Value.EnumerateArray().Select(s => (p.Name, s.GetString()!)))]
            : [],
        line.TryGetProperty("either", out var either) ? either.GetString() : null);

    private static List<string> Names(JsonElement line, string field) =>
        line.TryGetProperty(field, out var names) ? [.. names.EnumerateArray().Select(n => n.GetString()!)] : [];
}
