using System.Globalization;

namespace ShedBot.Trade.Figures;

/// <summary>Quantities as a rider reads them: fixed units, few decimals, the same in every culture.</summary>
internal static class Shown
{
    public static string Millimetres(Length length) => Text(length.Millimeters, "0.##", "mm");

    public static string Degrees(Angle angle) => Text(angle.Degrees, "0.#", "degrees");

    public static string Megapascals(Pressure pressure) => Text(pressure.Megapascals, "0", "MPa");

    public static string SquareMillimetres(Area area) => Text(area.SquareMillimeters, "0.#", "mm2");

    public static string Newtons(Force force) => Text(force.Newtons, "0", "N");

    public static string NewtonMetres(Torque torque) => Text(torque.NewtonMeters, "0.0#", "N m");

    public static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Text(double value, string format, string unit) =>
        $"{value.ToString(format, CultureInfo.InvariantCulture)} {unit}";
}
