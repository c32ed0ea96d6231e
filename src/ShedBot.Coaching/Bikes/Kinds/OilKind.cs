using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>Parts of fuel to one part of oil, kept as "24:1".</summary>
public sealed partial record OilKind : FieldKind
{
    /// <summary>Our own bounds: richer smokes and fouls, leaner than any grade asks for.</summary>
    private const double Least = 10, Most = 100;

    private const int MillilitresInLitre = 1000, Percent = 100;

    public override Result<string> Read(string text, Writer by)
    {
        if (Parts(text.Trim().ToLowerInvariant()) is >= Least and <= Most and var parts) return parts.ToString("0.#", CultureInfo.InvariantCulture) + ":1";
        return Refuse(text, "Write fuel to oil, like 24:1, or oil in the fuel, like 4 % or 40 ml per litre.");
    }

    public override string Show(string value, Units units) => value;

    /// <returns>Parts of fuel to one of oil, or null when it is no such value.</returns>
    internal static double? Kept(string value) => value.EndsWith(":1", StringComparison.Ordinal) ? LengthText.Number(value[..^2]) : null;

    private static double? Parts(string text)
    {
        if (Ratio().Match(text) is { Success: true } ratio)
        {
            var (a, b) = (LengthText.Number(ratio.Groups[1].Value), LengthText.Number(ratio.Groups[2].Value));
            return a == 1 ? b : b == 1 ? a : null;
        }

        if (Alone().Match(text) is not { Success: true } alone || LengthText.Number(alone.Groups[1].Value.Replace(',', '.')) is not (> 0 and var n)) return null;
        return alone.Groups["unit"].Value switch { "" => n, "%" => Percent / n, _ => MillilitresInLitre / n };
    }

    [GeneratedRegex(@"\A(\d{1,3}(?:\.\d)?)\s*(?::|/|\bto\b|\bin\b)\s*(\d{1,3}(?:\.\d)?)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Ratio();

    [GeneratedRegex(@"\A(\d{1,3}(?:[.,]\d)?)\s*(?<unit>%|ml\s*(?:per|/|in a|to a|a)\s*(?:l|litre|liter))?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Alone();
}
