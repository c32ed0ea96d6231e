using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>Lengths as riders write them: 18.2 mm, 1.8 cm, 0.72 in, 3/4", 1 1/8 inch. Kept in millimetres.</summary>
internal static partial class LengthText
{
    /// <summary>By definition (ISO 80000-3, international yard and pound agreement of 1959).</summary>
    public const double MillimetresPerInch = 25.4;

    private const int MillimetresPerCentimetre = 10;

    /// <param name="least">Millimetres; the least that is plausible.</param>
    /// <param name="most">Millimetres.</param>
    /// <returns>Millimetres, or null when it is no plausible length. A number alone is millimetres; one of a writer who thinks in inches is inches where only that is plausible.</returns>
    public static double? Read(string text, Units units, double least, double most)
    {
        if (Parse(text) is not var (number, unit)) return null;
        double? mm = unit switch
        {
            Unit.Millimetre => number,
            Unit.Centimetre => number * MillimetresPerCentimetre,
            Unit.Inch => number * MillimetresPerInch,
            _ when number < least && units == Units.Imperial => number * MillimetresPerInch,
            _ => number,
        };
        return mm >= least && mm <= most ? Math.Round(mm.Value, 2) : null;
    }

    /// <returns>As in "18.2 mm", for who thinks in inches "0.717 in (18.2 mm)".</returns>
    public static string Show(double mm, Units units) =>
        units == Units.Metric ? $"{Plain(mm)} mm" : string.Create(CultureInfo.InvariantCulture, $"{mm / MillimetresPerInch:0.###} in ({Plain(mm)} mm)");

    public static string Plain(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    public static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var n) ? n : null;

    /// <summary>Whether a unit is written; "3/4" alone is inches, since nobody writes millimetres so.</summary>
    internal static bool HasUnit(string text) => Parse(text) is { Unit: not Unit.None };

    private static (double Number, Unit Unit)? Parse(string text)
    {
        if (Length().Match(text.Trim().ToLowerInvariant()) is not { Success: true } found) return null;
        var (whole, above, below) = (found.Groups["whole"], found.Groups["above"], found.Groups["below"]);
        if (!whole.Success && !above.Success) return null;
        var number = whole.Success ? Number(whole.Value.Replace(',', '.')) : 0;
        if (above.Success)
        {
            if (Number(below.Value) is not (> 0 and var parts)) return null;
            number += Number(above.Value) / parts;
        }

        if (number is not { } read) return null;
        return (read, found.Groups["unit"].Value switch
        {
            "" => above.Success ? Unit.Inch : Unit.None,
            ['m', ..] => Unit.Millimetre,
            ['c', ..] => Unit.Centimetre,
            _ => Unit.Inch,
        });
    }

    private enum Unit
    {
        None,
        Millimetre,
        Centimetre,
        Inch,
    }

    [GeneratedRegex(
        """\A(?:about|around|roughly|~)?\s*(?<whole>(?>\d+(?:[.,]\d+)?)(?!\s*/))?(?:[\s-]*(?<above>\d+)\s*/\s*(?<below>\d+))?\s*(?<unit>mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?|in|inch|inches|"|”|'')?(?:\s+long)?\.?\z""",
        RegexOptions.CultureInvariant)]
    private static partial Regex Length();
}
