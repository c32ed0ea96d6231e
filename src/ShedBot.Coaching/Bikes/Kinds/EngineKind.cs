using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;
using ShedBot.Trade.Engine;
using UnitsNet;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>The size of the engine: bore x stroke, kept as "47x38"; else what it is sold as, kept as "66cc".</summary>
/// <remarks>Sold sizes are loose: 47 x 38 mm is 65.9 cc and is often sold as 80.</remarks>
public sealed partial record EngineKind : FieldKind
{
    /// <summary>Our own, wider than the kits in use, to catch a slip of the finger.</summary>
    private const double LeastLength = 25, MostLength = 70, LeastVolume = 20, MostVolume = 150;

    private const string Sold = "cc";

    public override Result<string> Read(string text, Writer by)
    {
        if (SizeKind.Pair(text, by.Units, LeastLength, MostLength) is var (bore, stroke) && Swept(bore, stroke) is >= LeastVolume and <= MostVolume)
            return $"{LengthText.Plain(bore)}x{LengthText.Plain(stroke)}";
        if (Volume().Match(text.Trim()) is { Success: true } found && LengthText.Number(found.Groups[1].Value) is >= LeastVolume and <= MostVolume and var cc)
            return LengthText.Plain(cc) + Sold;
        return Refuse(text, "Write bore x stroke, like 47 x 38 mm, or what it is sold as, like 66 cc.");
    }

    public override string Show(string value, Units units) => Cubic(value) is { } cc
        ? $"{LengthText.Plain(cc)} cc"
        : SizeKind.Show(SizeKind.Kept(value), units) is { } size ? $"bore x stroke {size}" : value;

    public override bool IsExact(string value) => Cubic(value) is null;

    /// <returns>The swept volume in cubic centimetres where bore and stroke are known, else null.</returns>
    internal static double? SweptOf(string value) => SizeKind.Kept(value) is var (bore, stroke) ? Swept(bore, stroke) : null;

    private static double Swept(double bore, double stroke) => Cylinder.Displacement(Length.FromMillimeters(bore), Length.FromMillimeters(stroke)).CubicCentimeters;

    private static double? Cubic(string value) => value.EndsWith(Sold, StringComparison.Ordinal) ? LengthText.Number(value[..^Sold.Length]) : null;

    [GeneratedRegex(@"\A(?:about\s+)?(\d+(?:\.\d+)?)\s*(?:cc|ccm|cm3|cm³)?\.?\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Volume();
}
