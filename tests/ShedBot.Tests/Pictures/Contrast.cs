using System.Globalization;

namespace ShedBot.Tests.Pictures;

/// <summary>Contrast of two colours of sRGB, 1 to 21. Source: W3C, Web Content Accessibility Guidelines 2.2, definitions of "contrast ratio" and "relative luminance".</summary>
internal static class Contrast
{
    /// <param name="one">As #rrggbb.</param>
    public static double Of(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour) =>
        (0.2126 * Linear(colour[1..3])) + (0.7152 * Linear(colour[3..5])) + (0.0722 * Linear(colour[5..7]));

    private static double Linear(string hex)
    {
        var share = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
