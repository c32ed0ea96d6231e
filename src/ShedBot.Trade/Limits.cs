using System.Globalization;
using System.Runtime.CompilerServices;

namespace ShedBot.Trade;

/// <summary>Range checks at the door of every calculation: the message says the limit and what was given.</summary>
internal static class Limits
{
    public static T MoreThanZero<T>(T quantity, [CallerArgumentExpression(nameof(quantity))] string? name = null)
        where T : struct, IQuantity =>
        // The sign of a length, force or torque is the same in every unit, so no conversion is needed here.
        // A quantity is never endless or not a number: the unit library refuses to make one.
        (double)quantity.Value > 0 ? quantity : throw Refuse(name, quantity, "more than 0");

    public static T ZeroOrMore<T>(T quantity, [CallerArgumentExpression(nameof(quantity))] string? name = null)
        where T : struct, IQuantity =>
        (double)quantity.Value >= 0 ? quantity : throw Refuse(name, quantity, "0 or more");

    public static double MoreThanZeroUpTo(
        double value, double most, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value > 0 && value <= most ? value : throw Refuse(name, value, $"more than 0 and at most {Plain(most)}");

    public static double Between(
        double value, double least, double most, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= least && value <= most ? value : throw Refuse(name, value, $"between {Plain(least)} and {Plain(most)}");

    public static int Between(
        int value, int least, int most, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= least && value <= most ? value : throw Refuse(name, value, $"between {Plain(least)} and {Plain(most)}");

    public static T Between<T>(
        T value, T least, T most, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : struct, IQuantity, IComparable<T> =>
        value.CompareTo(least) >= 0 && value.CompareTo(most) <= 0
            ? value
            : throw Refuse(name, value, $"between {Plain(least)} and {Plain(most)}");

    public static T Below<T>(T value, T bound, string what, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : struct, IQuantity, IComparable<T> =>
        value.CompareTo(bound) < 0 ? value : throw Refuse(name, value, $"less than {what} ({Plain(bound)})");

    public static T AtMost<T>(T value, T bound, string what, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : struct, IQuantity, IComparable<T> =>
        value.CompareTo(bound) <= 0 ? value : throw Refuse(name, value, $"at most {what} ({Plain(bound)})");

    private static ArgumentOutOfRangeException Refuse(string? name, IFormattable given, string limit) =>
        new(name, given, $"Must be {limit}; was {given.ToString(null, CultureInfo.InvariantCulture)}.");

    private static string Plain(IQuantity quantity) => quantity.ToString(null, CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
