using static System.Math;

namespace ShedBot.Trade.Bolts;

/// <summary>A coarse ISO metric thread of the sizes found on these engines.</summary>
/// <remarks>
/// Diameters and pitches: ISO 261 coarse series; stress areas: ISO 898-1, also in ISO 10684's annex [published], M6 [from memory] but
/// equal to the standard's own formula pi/4 x (d - 0.9382 P)^2.
/// </remarks>
public sealed record MetricThread
{
    private MetricThread(double diameter, double pitch, double stressArea) =>
        (Diameter, Pitch, StressArea) =
            (Length.FromMillimeters(diameter), Length.FromMillimeters(pitch), Area.FromSquareMillimeters(stressArea));

    public static MetricThread M5 { get; } = new(5, 0.8, 14.2);

    public static MetricThread M6 { get; } = new(6, 1.0, 20.1);

    public static MetricThread M8 { get; } = new(8, 1.25, 36.6);

    public static MetricThread M10 { get; } = new(10, 1.5, 58.0);

    /// <summary>All four, smallest first.</summary>
    public static IReadOnlyList<MetricThread> All { get; } = [M5, M6, M8, M10];

    /// <summary>Outside diameter d.</summary>
    public Length Diameter { get; }

    /// <summary>Distance from crest to crest, P.</summary>
    public Length Pitch { get; }

    /// <summary>Area A_s that carries the tension.</summary>
    public Area StressArea { get; }

    /// <summary>The name on the packet, such as M6.</summary>
    public string Name => $"M{Diameter.Millimeters:0}";

    /// <summary>The coarse thread with the pitch that a gauge shows.</summary>
    /// <param name="pitch">Measured pitch; taken when within 0.06 mm of a coarse pitch.</param>
    /// <returns>The thread, or null when no coarse thread has that pitch. Check the diameter too: fine threads share pitches.</returns>
    public static MetricThread? FromPitch(Length pitch) =>
        All.FirstOrDefault(thread => Abs((thread.Pitch - pitch).Millimeters) <= 0.06);
}
