using System.Collections.Immutable;

namespace ShedBot.Coaching.Logbook;

/// <summary>A pace as people say it: about 4 days a week, 10 km; every day, 40 min a day.</summary>
internal static class PaceWords
{
    public const string HowTo = "Write it like: about 4 days a week, 10 km.";

    private const int DaysInWeek = 7;

    private static readonly ImmutableArray<string> Numbers = ["one", "two", "three", "four", "five", "six", "seven"];

    private static readonly ImmutableHashSet<string> Filler =
        ["about", "usually", "roughly", "around", "each", "a", "per", "of", "and", "with", "day", "time", "ride", "i", "for", "some", "riding"];

    /// <param name="must">True when it can be nothing but a pace: then it is refused rather than left to the coach.</param>
    public static Result<BikeRequest>? Read(Reader reader, bool must)
    {
        (double? days, double? km, double? hours, Refusal? wrong) = (null, null, null, null);
        while (!reader.AtEnd)
        {
            if (DaysPerWeek(reader) is { } read)
            {
                wrong ??= days is null ? null : new Refusal("twice", $"That names the days a week twice. {HowTo}");
                days = read;
            }
            else if (AmountWords.Read(reader) is { } amount)
            {
                wrong ??= amount.Refused;
                (km, hours) = (amount.Kilometres ?? km, amount.Hours ?? hours);
            }
            else if (!reader.TakeAny(Filler))
            {
                if (!must) return null;
                return new Refusal("pace-words", $"I cannot read that as a pace. {HowTo}");
            }
        }

        if (days is null && !must) return null;
        if (days is null) return new Refusal("pace-words", $"How many days a week? {HowTo}");
        if (wrong is not null) return wrong;
        return (BikeRequest)new PaceEntry(days.Value, km, hours);
    }

    private static double? DaysPerWeek(Reader reader)
    {
        if (reader.Take("every day") || reader.Take("daily")) return DaysInWeek;
        if (reader.Take("once a week")) return 1;
        if (reader.Take("twice a week")) return 2;
        double? number = Reader.Number(reader.Next) is { } n ? n : Numbers.IndexOf(reader.Next) is >= 0 and var i ? i + 1 : null;
        if (number is null || reader.At(1) is not ("day" or "days" or "time" or "times") || reader.At(2) is not ("a" or "per" or "each" or "in" or "week"))
        {
            return null;
        }

        var ahead = reader.At(2) == "week" ? 2 : reader.At(3) == "a" ? 4 : 3;
        if (reader.At(ahead) != "week") return null;
        reader.Skip(ahead + 1);
        return number;
    }
}
