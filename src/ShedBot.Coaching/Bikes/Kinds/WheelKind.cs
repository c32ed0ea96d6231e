using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;
using ShedBot.Trade.Gearing;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>
/// The wheel by its tyre as ISO 5775 marks it: width and bead seat, kept as "54-559"; the seat alone, "559"; or, where nobody has looked yet, what it goes by,
/// "26in", which may be any of several rims.
/// </summary>
public sealed partial record WheelKind : FieldKind
{
    private const string Nominal = "in";

    private const double LeastWidthInches = 0.75, MostWidthInches = 5;

    public const string Write = "Write what stands on the tyre, like 54-559 or 26 x 2.125; the small print with the dash is the sure one.";

    public override Result<string> Read(string text, Writer by)
    {
        var plain = Spaces().Replace(text.Trim().ToLowerInvariant().Replace('×', 'x').Replace('”', '"').Replace(',', '.'), " ").TrimEnd('.');
        if (TyreMarking.Read(plain) is { } marking)
        {
            var seat = (int)marking.BeadSeat.Millimeters;
            return WheelSizes.Seats.Contains(seat) ? string.Create(CultureInfo.InvariantCulture, $"{marking.Width.Millimeters:0}-{seat}") : Refuse(text, $"I know no rim of {seat} mm. {Write}");
        }

        if (Inches().Match(plain) is { Success: true } inches && OfInches(inches) is { } known) return known;
        if (Metric().Match(plain) is { Success: true } metric && WheelSizes.OfMetric(metric.Groups["mark"].Value + metric.Groups["letter"].Value) is { } of)
            return metric.Groups["width"] is { Success: true } width ? $"{width.Value}-{of}" : Plain(of);
        if (Alone().Match(plain) is { Success: true } alone)
        {
            var number = alone.Groups[1].Value;
            if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var seat) && WheelSizes.Seats.Contains(seat)) return Plain(seat);
            if (WheelSizes.IsNominal(number)) return number + Nominal;
        }

        return Refuse(text, Write);
    }

    public override string Show(string value, Units units) => value.EndsWith(Nominal, StringComparison.Ordinal)
        ? $"{value[..^Nominal.Length]} inch"
        : Width(value) is { } width
            ? string.Create(CultureInfo.InvariantCulture, $"{value}, a tyre {width} mm wide on a {Seat(value)} mm rim")
            : $"{value} mm rim";

    public override string? Doubt(string value) => IsExact(value) ? null : "which of several, the small print on the tyre tells";

    public override bool IsExact(string value) => !value.EndsWith(Nominal, StringComparison.Ordinal);

    /// <returns>The marking where width and seat are known, else null.</returns>
    internal static TyreMarking? MarkingOf(string value) => TyreMarking.Read(value);

    private static string? OfInches(Match found)
    {
        var (rim, width, above, below) = (found.Groups["rim"].Value, found.Groups["width"].Value, found.Groups["above"], found.Groups["below"]);
        if (above.Success)
        {
            var mark = $"{rim} x {width} {above.Value}/{below.Value}";
            return WheelSizes.OfFraction(mark) is { } seat && Millimetres(width, above.Value, below.Value) is { } mm ? $"{mm}-{seat}" : null;
        }

        var wide = LengthText.Number(width);
        return width.Contains('.', StringComparison.Ordinal) && wide is >= LeastWidthInches and <= MostWidthInches && WheelSizes.OfDecimal(rim) is { } dec
            ? $"{Millimetres(width, null, null)}-{dec}"
            : WheelSizes.OfFraction($"{rim} x {width}") is { } whole && wide is { } one ? $"{Plain(Math.Round(one * LengthText.MillimetresPerInch))}-{whole}"
            // "26 x 2": a whole number can only be meant as a decimal width there.
            : wide is >= 2 and <= MostWidthInches && WheelSizes.OfDecimal(rim) is { } plain ? $"{Millimetres(width, null, null)}-{plain}" : null;
    }

    private static string? Millimetres(string whole, string? above, string? below)
    {
        var part = above is null ? 0 : LengthText.Number(below!) is > 0 and var parts ? LengthText.Number(above) / parts : null;
        return LengthText.Number(whole) + part is { } inches ? Plain(Math.Round(inches * LengthText.MillimetresPerInch)) : null;
    }

    private static string Plain(double number) => number.ToString("0", CultureInfo.InvariantCulture);

    private static int? Width(string value) => value.Split('-') is [var width, _] && int.TryParse(width, NumberStyles.None, null, out var mm) ? mm : null;

    private static string Seat(string value) => value[(value.IndexOf('-', StringComparison.Ordinal) + 1)..];

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    [GeneratedRegex("""\A(?<rim>\d{2}(?:\.5)?)\s?(?:in|inch|")?\s?x\s?(?<width>\d(?:\.\d{1,3})?)(?:[ -](?<above>\d)/(?<below>\d))?\s?(?:in|inch|")?\s?(?:tyres?|tires?|wheels?)?\z""", RegexOptions.CultureInvariant)]
    private static partial Regex Inches();

    [GeneratedRegex(@"\A(?<mark>700|650)(?:\s?x\s?(?<width>\d{2}))?\s?(?<letter>[abc])?\s?(?:tyres?|tires?|wheels?)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex("""\A(\d{2,3}(?:\.5)?)[\s-]?(?:in|inch|inches|"|mm)?\s?(?:wheels?|tyres?|tires?|rims?)?\z""", RegexOptions.CultureInvariant)]
    private static partial Regex Alone();
}
