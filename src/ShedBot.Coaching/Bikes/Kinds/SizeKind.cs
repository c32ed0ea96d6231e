using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>Two lengths, kept as "3x5".</summary>
/// <param name="Least">Millimetres, of each.</param>
/// <param name="Most">Millimetres, of each.</param>
/// <param name="Write">What to write, as in "Write width x height, like 3 x 5 mm."</param>
public sealed partial record SizeKind(double Least, double Most, string Write) : FieldKind
{
    public override Result<string> Read(string text, Writer by) =>
        Pair(text, by.Units, Least, Most) is var (a, b) ? $"{LengthText.Plain(a)}x{LengthText.Plain(b)}" : Refuse(text, Write);

    public override string Show(string value, Units units) => Show(Kept(value), units) ?? value;

    /// <returns>Both in millimetres, or null when the text is not two plausible lengths. A unit behind the second counts for both.</returns>
    internal static (double A, double B)? Pair(string text, Units units, double least, double most)
    {
        if (Times().Match(text.Trim()) is not { Success: true } found) return null;
        var (first, second) = (found.Groups[1].Value, found.Groups[2].Value);
        if (!LengthText.HasUnit(first) && Unit().Match(second) is { Success: true } unit) first += unit.Value;
        return LengthText.Read(first, units, least, most) is { } a && LengthText.Read(second, units, least, most) is { } b ? (a, b) : null;
    }

    /// <returns>What a kept value holds, or null when it is no size.</returns>
    internal static (double A, double B)? Kept(string value) =>
        value.Split('x') is [var a, var b] && LengthText.Number(a) is { } one && LengthText.Number(b) is { } other ? (one, other) : null;

    internal static string? Show((double A, double B)? size, Units units) => size is not var (a, b) ? null
        : units == Units.Metric ? $"{LengthText.Plain(a)} x {LengthText.Plain(b)} mm"
        : $"{Inch(a)} x {Inch(b)} in ({LengthText.Plain(a)} x {LengthText.Plain(b)} mm)";

    private static string Inch(double mm) => (mm / LengthText.MillimetresPerInch).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\A(.+?)\s*(?:x|×|\*|\bby\b)\s*(.+)\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Times();

    [GeneratedRegex("""(?:mm|cm|inches|inch|in|")\.?\z""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Unit();
}
