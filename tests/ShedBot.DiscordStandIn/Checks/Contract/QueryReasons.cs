using System.Globalization;
using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>What is wrong with the query of a request: names the operation does not know, values of the wrong kind.</summary>
internal static class QueryReasons
{
    public static IEnumerable<string> Of(Description description, Operation operation, IReadOnlyDictionary<string, string> query)
    {
        var known = operation.Query.ToDictionary(p => p.Name, p => p.Pointer, StringComparer.Ordinal);
        foreach (var (name, value) in query)
            if (!known.TryGetValue(name, out var pointer))
                yield return $"query {name}: the operation knows no such parameter";
            else if (!Readings(value).Any(reading => description.Evaluate(pointer, reading).IsValid))
                yield return $"query {name}: the value does not fit";
    }

    /// <summary>A query has no kinds of value: the same characters may be meant as a string, a number or a truth.
    /// Source for the spellings of truth: the platform's API reference, "Boolean query strings".</summary>
    private static IEnumerable<JsonElement> Readings(string value)
    {
        yield return JsonSerializer.SerializeToElement(value);
        if (long.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) yield return JsonSerializer.SerializeToElement(number);
        if (value is "true" or "True" or "1" or "false" or "False" or "0") yield return JsonSerializer.SerializeToElement(value is "true" or "True" or "1");
    }
}
