using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Sentences about a field that is too short, too long, too small or too large. Lengths are UTF-16 code units: never fewer than
/// the characters the platform counts, so what passes here passes there.</summary>
internal static class Bounds
{
    public static IEnumerable<string> Length(JsonElement holder, string field, int least, int most, string at)
    {
        if (holder.Text(field) is { } text && (text.Length < least || text.Length > most))
            yield return $"{at}{field}: {least} to {most} characters, not {text.Length}";
    }

    /// <summary>As <see cref="Length"/>, and the field must be there.</summary>
    public static IEnumerable<string> Needed(JsonElement holder, string field, int least, int most, string at) =>
        holder.Text(field) is null ? [$"{at}{field}: is needed"] : Length(holder, field, least, most, at);

    public static IEnumerable<string> Count(JsonElement holder, string field, int least, int most, string at)
    {
        if (holder.Field(field) is { ValueKind: JsonValueKind.Array } list && (list.GetArrayLength() < least || list.GetArrayLength() > most))
            yield return $"{at}{field}: {least} to {most} of them, not {list.GetArrayLength()}";
    }

    public static IEnumerable<string> Range(JsonElement holder, string field, long least, long most, string at)
    {
        if (holder.Whole(field) is { } value && (value < least || value > most))
            yield return $"{at}{field}: {least} to {most}, not {value}";
    }

    public static IEnumerable<string> Order(JsonElement holder, string low, string high, string at)
    {
        if (holder.Whole(low) is { } least && holder.Whole(high) is { } most && least > most)
            yield return $"{at}{low}: must not be above {high}";
    }

    public static IEnumerable<string> Absent(JsonElement holder, string at, string why, params ReadOnlySpan<string> fields)
    {
        var found = new List<string>();
        foreach (var field in fields)
            if (holder.Field(field) is not null) found.Add($"{at}{field}: {why}");
        return found;
    }
}
