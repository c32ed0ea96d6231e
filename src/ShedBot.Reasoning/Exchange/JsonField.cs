using System.Collections.Immutable;
using System.Text.Json;

namespace ShedBot.Reasoning.Exchange;

/// <summary>A JSON value that knows where it stands, so that a complaint about it can say so. A null counts as absent.</summary>
internal sealed record JsonField(JsonElement Value, string Path)
{
    public JsonField Need(string name) => Maybe(name) ?? throw new FormatException($"{Path}.{name} is missing.");

    public JsonField? Maybe(string name)
    {
        Expect(JsonValueKind.Object, "an object");
        return Value.TryGetProperty(name, out var found) && found.ValueKind != JsonValueKind.Null ? new(found, $"{Path}.{name}") : null;
    }

    public IEnumerable<(string Name, JsonField Value)> Fields()
    {
        Expect(JsonValueKind.Object, "an object");
        return Value.EnumerateObject().Select(p => (p.Name, new JsonField(p.Value, $"{Path}.{p.Name}"))).ToList();
    }

    public IEnumerable<JsonField> Items()
    {
        Expect(JsonValueKind.Array, "a list");
        return Value.EnumerateArray().Select((item, i) => new JsonField(item, $"{Path}[{i}]")).ToList();
    }

    public string Text()
    {
        Expect(JsonValueKind.String, "a text");
        return Value.GetString()!;
    }

    public double Number()
    {
        Expect(JsonValueKind.Number, "a number");
        return Value.TryGetDouble(out var number) && double.IsFinite(number) ? number : throw Wrong("is not a number that can be used");
    }

    public ImmutableDictionary<string, double> Numbers()
    {
        var numbers = ImmutableDictionary.CreateBuilder<string, double>(StringComparer.Ordinal);
        foreach (var (name, value) in Fields()) numbers[name] = value.Number();
        return numbers.ToImmutable();
    }

    public FormatException Wrong(string what) => new($"{Path} {what}.");

    private void Expect(JsonValueKind kind, string what)
    {
        if (Value.ValueKind != kind) throw Wrong($"must be {what}");
    }
}
