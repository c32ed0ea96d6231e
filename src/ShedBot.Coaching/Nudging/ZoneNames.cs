using System.Collections.Immutable;
using System.Text;
using NodaTime;
using NodaTime.TimeZones;

namespace ShedBot.Coaching.Nudging;

/// <summary>Finds time zones of the IANA data by what people call the place.</summary>
internal static class ZoneNames
{
    /// <summary>Letter by letter, because where the program runs without the tables of languages it cannot part a letter from its accent.</summary>
    private const string Accented = "áàâãäåéèêëíìîïóòôõöøúùûüýçñšžłćğı", Bare = "aaaaaaeeeeiiiioooooouuuuycnszlcgi";

    private static readonly TzdbDateTimeZoneSource Source = TzdbDateTimeZoneSource.Default;

    private static readonly ImmutableArray<string> Places = [.. DateTimeZoneProviders.Tzdb.Ids.Where(i => i.Contains('/', StringComparison.Ordinal) && !i.StartsWith("Etc/", StringComparison.Ordinal))];

    /// <returns>The one zone of that name; else all that it may mean. A zone with several names is one, and goes by the name that was written.</returns>
    public static ImmutableArray<string> Find(string text)
    {
        var wanted = Plain(text);
        if (wanted.Length == 0) return [];
        if (DateTimeZoneProviders.Tzdb.Ids.FirstOrDefault(i => Plain(i) == wanted) is { } exact) return [exact];
        var cities = Beginning(text);
        return cities.IsEmpty ? Country(wanted) : cities;
    }

    /// <returns>The zones whose city begins so, by name; only those whose city is called so where there are any.</returns>
    public static ImmutableArray<string> Beginning(string text)
    {
        var wanted = Plain(text);
        if (wanted.Length == 0) return [];
        var whole = Once(Places.Where(i => Plain(City(i)) == wanted));
        return !whole.IsEmpty ? whole : Once(Places.Where(i => Plain(City(i)).StartsWith(wanted, StringComparison.Ordinal) || Plain(i).StartsWith(wanted, StringComparison.Ordinal)));
    }

    /// <summary>By the countries that the data name; those zones of a country that differ today.</summary>
    private static ImmutableArray<string> Country(string wanted) =>
        Once((Source.ZoneLocations ?? []).Where(l => Plain(l.CountryName) == wanted).Select(l => l.ZoneId));

    /// <summary>Of names of the same zone the one that the data prefer, where it is among them.</summary>
    private static ImmutableArray<string> Once(IEnumerable<string> ids) =>
        [.. ids.GroupBy(i => Source.CanonicalIdMap[i]).Select(g => g.Contains(g.Key) ? g.Key : g.First()).Order(StringComparer.Ordinal)];

    private static string City(string id) => id[(id.LastIndexOf('/') + 1)..];

    /// <summary>Small letters without accents; blanks, dashes and underlines are one, points and quotes are none: "St. John's", "São Paulo".</summary>
    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text.Trim().ToLowerInvariant())
        {
            if (c is ' ' or '-' or '_') plain.Append(' ');
            else if (c is not ('.' or '\'' or '’')) plain.Append(Accented.IndexOf(c, StringComparison.Ordinal) is >= 0 and var at ? Bare[at] : c);
        }

        return plain.ToString();
    }
}
