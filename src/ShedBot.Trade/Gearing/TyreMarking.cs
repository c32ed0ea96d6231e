using System.Globalization;
using System.Text.RegularExpressions;

namespace ShedBot.Trade.Gearing;

/// <summary>A tyre size as ISO 5775-1 marks it on the sidewall: section width, dash, bead seat diameter, such as 50-559.</summary>
/// <remarks>Source: ISO 5775-1 [published]. The accepted ranges are our own and wider than the sizes in use, to catch a misread sidewall.</remarks>
public sealed partial record TyreMarking
{
    private const double LeastWidth = 15, MostWidth = 130, LeastSeat = 150, MostSeat = 700;

    /// <param name="width">Section width, 15 to 130 mm.</param>
    /// <param name="beadSeat">Bead seat diameter, 150 to 700 mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size outside its range.</exception>
    public TyreMarking(Length width, Length beadSeat)
    {
        Limits.Between(width, Length.FromMillimeters(LeastWidth), Length.FromMillimeters(MostWidth));
        Limits.Between(beadSeat, Length.FromMillimeters(LeastSeat), Length.FromMillimeters(MostSeat));
        (Width, BeadSeat) = (width, beadSeat);
    }

    public Length Width { get; }

    public Length BeadSeat { get; }

    /// <summary>
    /// Unloaded circumference pi x (seat + 2 x width). Under load it is 1 to 3 % less: a roll-out, valve down to valve down with the
    /// rider aboard, beats it.
    /// </summary>
    public Length TheoreticalCircumference => Math.PI * (BeadSeat + (2 * Width));

    /// <summary>Reads a marking out of what a rider typed off the sidewall.</summary>
    /// <returns>The size, or null when there is no ISO marking in it: inch marks such as 26x2.125 name several different rims.</returns>
    public static TyreMarking? Read(string? text)
    {
        if (Marking().Match(text ?? "") is not { Success: true } found) return null;
        var width = double.Parse(found.Groups["width"].ValueSpan, CultureInfo.InvariantCulture);
        var seat = double.Parse(found.Groups["seat"].ValueSpan, CultureInfo.InvariantCulture);
        return width is >= LeastWidth and <= MostWidth && seat is >= LeastSeat and <= MostSeat
            ? new TyreMarking(Length.FromMillimeters(width), Length.FromMillimeters(seat))
            : null;
    }

    [GeneratedRegex(@"(?<![0-9.])(?<width>[0-9]{2,3})\s?-\s?(?<seat>[0-9]{3})(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Marking();
}
