using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Coaching.Clubs;
using ShedBot.Trade.Engine;
using ShedBot.Trade.Gearing;
using UnitsNet;

namespace ShedBot.Coaching.Bikes;

/// <summary>What follows from the facts of a bike by arithmetic; what lacks a fact is left out.</summary>
public static class SheetFigures
{
    private const int ShownSpeed = 5000, CanLitres = 5;

    private const double KilometresPerMile = 1.609344;

    public static ImmutableArray<string> Of(BikeProfile bike, Units units) => [.. new[] { Engine(bike), Oil(bike, units), Gears(bike), RoadSpeedOf(bike, units) }.OfType<string>()];

    private static string? Engine(BikeProfile bike) =>
        Value(bike, BikeSheet.Engine) is { } size && EngineKind.SweptOf(size) is { } cc ? $"the engine sweeps {Number(cc, "0.0")} cc" : null;

    private static string? Oil(BikeProfile bike, Units units)
    {
        if (Value(bike, BikeSheet.Oil) is not { } kept || OilKind.Kept(kept) is not { } ratio) return null;
        var litre = $"{Number(OilMix.OilFor(Volume.FromLiters(1), ratio).Milliliters, "0")} ml of oil to a litre of fuel";
        return units == Units.Imperial
            ? $"{kept} is {Number(OilMix.OilFor(Volume.FromUsGallons(1), ratio).UsOunces, "0.00")} US fl oz of oil to a US gallon of fuel, or {litre}"
            : $"{kept} is {litre}, {Number(OilMix.OilFor(Volume.FromLiters(CanLitres), ratio).Milliliters, "0")} ml to {CanLitres} litres";
    }

    private static string? Gears(BikeProfile bike)
    {
        if (Final(bike) is not { } final) return null;
        return Primary(bike) is { } primary
            ? $"the engine turns {Number(GearRatio.Overall(primary, final), "0.00")} times for one turn of the rear wheel"
            : $"the small sprocket turns {Number(final, "0.00")} times for one turn of the rear wheel";
    }

    private static string? RoadSpeedOf(BikeProfile bike, Units units)
    {
        if (Final(bike) is not { } final || Primary(bike) is not { } primary || Value(bike, BikeSheet.Wheel) is not { } wheel || WheelKind.MarkingOf(wheel) is not { } tyre) return null;
        var kmh = RoadSpeed.At(RotationalSpeed.FromRevolutionsPerMinute(1000), GearRatio.Overall(primary, final), tyre.TheoreticalCircumference).KilometersPerHour;
        return $"without slip about {Say(kmh, "0.0", units)} for each 1000 turns of the engine a minute, {Say(kmh * ShownSpeed / 1000, "0", units)} at {ShownSpeed}; a loaded tyre rolls 1 to 3 % less";
    }

    private static double? Final(BikeProfile bike) => Teeth(bike, BikeSheet.RearSprocket) is { } rear && Teeth(bike, BikeSheet.SmallSprocket) is { } small ? GearRatio.FromTeeth(rear, small) : null;

    private static double? Primary(BikeProfile bike) => Value(bike, BikeSheet.Primary) is { } pair && TeethPairKind.Kept(pair) is var (big, small) ? GearRatio.FromTeeth(big, small) : null;

    private static int? Teeth(BikeProfile bike, string field) =>
        int.TryParse(Value(bike, field), NumberStyles.None, CultureInfo.InvariantCulture, out var teeth) ? teeth : null;

    private static string? Value(BikeProfile bike, string field) => bike.Facts.GetValueOrDefault(field)?.Value;

    private static string Say(double kmh, string format, Units units) =>
        units == Units.Imperial ? $"{Number(kmh / KilometresPerMile, format)} mph" : $"{Number(kmh, format)} km/h";

    private static string Number(double number, string format) => number.ToString(format, CultureInfo.InvariantCulture);
}
