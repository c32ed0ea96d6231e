using System.Collections.Immutable;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>Which rim is meant by what stands on a tyre in inches.</summary>
/// <remarks>
/// The bead seat diameters are those of ISO 5775; inch marks are no standard. Marks with a decimal width and those with a fraction name different rims: checked
/// against public tables of tyre sizes for 26, 24, 22, 20, 18 and 16 decimal, 28 and 29, 27 x 1 1/4, 26 x 1 1/2; the other marks with fractions are from memory.
/// </remarks>
internal static class WheelSizes
{
    /// <summary>Millimetres. Those in use and a few old ones.</summary>
    public static readonly ImmutableSortedSet<int> Seats =
        [203, 239, 251, 305, 317, 337, 340, 349, 355, 369, 390, 400, 406, 419, 438, 440, 451, 457, 484, 489, 490, 498, 501, 507, 520, 531, 534, 540, 541, 547, 559, 571, 584, 587, 590, 597, 599, 622, 630, 635, 642];

    private static readonly ImmutableDictionary<string, int> Decimal = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["16"] = 305,
        ["18"] = 355,
        ["20"] = 406,
        ["22"] = 457,
        ["24"] = 507,
        ["26"] = 559,
        ["27.5"] = 584,
        ["28"] = 622,
        ["29"] = 622,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static readonly ImmutableDictionary<string, int> Fraction = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["16 x 1 3/8"] = 349,
        ["18 x 1 3/8"] = 400,
        ["20 x 1 1/8"] = 451,
        ["20 x 1 3/8"] = 451,
        ["20 x 1 3/4"] = 419,
        ["24 x 1"] = 520,
        ["24 x 1 1/4"] = 547,
        ["24 x 1 3/8"] = 540,
        ["26 x 1"] = 571,
        ["26 x 1 1/4"] = 597,
        ["26 x 1 3/8"] = 590,
        ["26 x 1 1/2"] = 584,
        ["26 x 1 3/4"] = 571,
        ["27 x 1"] = 630,
        ["27 x 1 1/8"] = 630,
        ["27 x 1 1/4"] = 630,
        ["28 x 1 1/2"] = 635,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static readonly ImmutableDictionary<string, int> Metric = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["700a"] = 642,
        ["700b"] = 635,
        ["700c"] = 622,
        ["700"] = 622,
        ["650a"] = 590,
        ["650b"] = 584,
        ["650c"] = 571,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <param name="inches">As in "26".</param>
    /// <returns>The seat in millimetres of a mark with a decimal width such as 26 x 2.125, or null.</returns>
    public static int? OfDecimal(string inches) => Decimal.TryGetValue(inches, out var seat) ? seat : null;

    /// <param name="mark">As in "26 x 1 3/8".</param>
    public static int? OfFraction(string mark) => Fraction.TryGetValue(mark, out var seat) ? seat : null;

    /// <param name="mark">As in "700c".</param>
    public static int? OfMetric(string mark) => Metric.TryGetValue(mark, out var seat) ? seat : null;

    public static bool IsNominal(string inches) => Decimal.ContainsKey(inches) || inches == "27";
}
