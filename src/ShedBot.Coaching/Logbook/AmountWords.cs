using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Logbook;

/// <summary>How far or how long: one of both, or why it is neither.</summary>
internal sealed record AmountRead(double? Kilometres, double? Hours, Refusal? Refused = null);

/// <summary>Distances and times as people write them: 12 km, 7.5 miles, 40 min, 1 h 20.</summary>
internal static class AmountWords
{
    /// <summary>By definition: the international mile, exactly 1.609344 km (international yard and pound agreement of 1959).</summary>
    public const double KilometresPerMile = 1.609344;

    public const string HowTo = "Write a distance like 12 km or 8 miles, or a time like 40 min or 1 h 20 min.";

    private const int MinutesInHour = 60;

    private static readonly ImmutableHashSet<string> Km = ["km", "kms", "kilometre", "kilometres", "kilometer", "kilometers"];
    private static readonly ImmutableHashSet<string> Miles = ["mi", "mile", "miles"];
    private static readonly ImmutableHashSet<string> Hours = ["h", "hr", "hrs", "hour", "hours"];
    private static readonly ImmutableHashSet<string> Minutes = ["min", "mins", "minute", "minutes"];

    public static bool IsUnit(string word) => Km.Contains(word) || Miles.Contains(word) || Hours.Contains(word) || Minutes.Contains(word);

    /// <returns>Null when no amount comes next; then nothing is taken.</returns>
    public static AmountRead? Read(Reader reader)
    {
        if (reader.Take("half an hour")) return new(null, 0.5);
        if (reader.Take("an hour")) return new(null, 1);
        if (reader.Take("a mile")) return new(KilometresPerMile, null);
        if (Reader.Number(reader.Next) is not { } number) return null;
        var unit = reader.At(1);
        double? factor = Km.Contains(unit) ? 1 : Miles.Contains(unit) ? KilometresPerMile : null;
        if (factor is { } f)
        {
            reader.Skip(2);
            return Above(number, new(number * f, null), $"{reader.At(-2)} {unit}");
        }

        if (Minutes.Contains(unit))
        {
            reader.Skip(2);
            return Above(number, new(null, number / MinutesInHour), $"{reader.At(-2)} {unit}");
        }

        if (!Hours.Contains(unit)) return null;
        reader.Skip(2);
        var hours = number;
        // "1 h 20", "1 h and 20 min"
        var ahead = reader.Next == "and" ? 1 : 0;
        if (Reader.Number(reader.At(ahead)) is { } more and >= 0 and < MinutesInHour && !Km.Contains(reader.At(ahead + 1)) && !Miles.Contains(reader.At(ahead + 1)))
        {
            var named = Minutes.Contains(reader.At(ahead + 1));
            if (named || (ahead == 0 && reader.At(1).Length == 0))
            {
                hours += more / MinutesInHour;
                reader.Skip(ahead + (named ? 2 : 1));
            }
        }

        return Above(hours, new(null, hours), $"{number.ToString(CultureInfo.InvariantCulture)} {unit}");
    }

    /// <summary>A text that is to be a distance and nothing else.</summary>
    /// <param name="units">Of a number that stands alone.</param>
    public static AmountRead Distance(string text, Units units) =>
        Alone(text) is { } number
            ? Above(number, new(units == Units.Imperial ? number * KilometresPerMile : number, null), text.Trim())
            : All(text) is ({ Kilometres: not null } or { Refused.Code: "amount" }) and { } read
                ? read
                : Wrong($"I cannot read \"{Cards.CleanText.OneLine(text, 40)}\" as a distance. Write it like {(units == Units.Imperial ? "8 miles or 12 km" : "12 km or 8 miles")}.");

    /// <summary>A text that is to be a time and nothing else; a number that stands alone is minutes.</summary>
    public static AmountRead Time(string text) =>
        Alone(text) is { } number
            ? Above(number, new(null, number / MinutesInHour), text.Trim())
            : All(text) is ({ Hours: not null } or { Refused.Code: "amount" }) and { } read
                ? read
                : Wrong($"I cannot read \"{Cards.CleanText.OneLine(text, 40)}\" as a time. Write it like 40 min or 1 h 20 min.");

    private static double? Alone(string text) => Reader.Number(text.Trim());

    private static AmountRead? All(string text)
    {
        var reader = new Reader(Tokens.Of(text));
        var read = Read(reader);
        return reader.AtEnd && Tokens.Whole(text) ? read : null;
    }

    private static AmountRead Above(double number, AmountRead read, string said) =>
        number > 0 ? read : new(null, null, new Refusal("amount", $"{said} is no ride. {HowTo}"));

    private static AmountRead Wrong(string why) => new(null, null, new Refusal("amount-words", why));
}
