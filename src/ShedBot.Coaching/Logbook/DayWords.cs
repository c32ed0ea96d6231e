using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;

namespace ShedBot.Coaching.Logbook;

/// <summary>A day that was read, or why it is none.</summary>
internal sealed record DayRead(LocalDate Day, Refusal? Refused = null);

/// <summary>Days as people write them: today, yesterday, sunday, 1 march, march 1st 2026, 2026-03-01, 3 days ago, in 2 weeks.</summary>
internal static class DayWords
{
    public const string HowTo = "Write a day like 2026-03-01, 1 march, yesterday or sunday.";

    private static readonly ImmutableArray<string> Months =
        ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"];

    private static readonly ImmutableArray<string> Weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

    private static readonly ImmutableHashSet<string> Endings = ["st", "nd", "rd", "th"];

    /// <param name="coming">True when the day is to come: "1 march" is the next one; else the last one.</param>
    /// <returns>Null when no day comes next; then nothing is taken.</returns>
    public static DayRead? Read(Reader reader, LocalDate today, bool coming) =>
        Plain(reader, today) ?? Relative(reader, today) ?? Weekday(reader, today, coming) ?? Iso(reader) ?? Named(reader, today, coming);

    /// <summary>A text that is to be a day and nothing else.</summary>
    public static DayRead Whole(string text, LocalDate today, bool coming)
    {
        var reader = new Reader(Tokens.Of(text));
        _ = reader.Take("on");
        return Tokens.Whole(text) && Read(reader, today, coming) is { } read && (read.Refused is not null || reader.AtEnd)
            ? read
            : Wrong($"I cannot read \"{Cards.CleanText.OneLine(text, 40)}\" as a day.");
    }

    private static DayRead? Plain(Reader reader, LocalDate today)
    {
        if (reader.Take("today")) return new(today);
        if (reader.Take("yesterday")) return new(today.PlusDays(-1));
        if (reader.Take("tomorrow")) return new(today.PlusDays(1));
        return reader.Take("the day before yesterday") || reader.Take("day before yesterday") ? new(today.PlusDays(-2)) : null;
    }

    private static DayRead? Relative(Reader reader, LocalDate today)
    {
        var ahead = reader.Next == "in" ? 1 : 0;
        if (Reader.Number(reader.At(ahead)) is not ({ } number and > 0 and <= 1000) || number != Math.Floor(number)) return null;
        int? days = reader.At(ahead + 1) switch { "day" or "days" => 1, "week" or "weeks" => 7, _ => null };
        if (days is not { } each || (ahead == 0 && reader.At(2) != "ago")) return null;
        reader.Skip(3);
        return new(today.PlusDays((ahead == 1 ? 1 : -1) * each * (int)number));
    }

    private static DayRead? Weekday(Reader reader, LocalDate today, bool coming)
    {
        var ahead = reader.Next is "last" or "next" ? 1 : 0;
        var number = Find(Weekdays, reader.At(ahead));
        if (number < 0) return null;
        var forward = ahead == 1 ? reader.Next == "next" : coming;
        reader.Skip(ahead + 1);
        var day = (IsoDayOfWeek)(number + 1);
        // "Sunday" said on a sunday is that very day where it was ridden, and the one in a week where it is to come.
        return new(forward ? today.Next(day) : ahead == 0 && today.DayOfWeek == day ? today : today.Previous(day));
    }

    private static DayRead? Iso(Reader reader)
    {
        var piece = reader.Next;
        if (piece.Contains('/', StringComparison.Ordinal) || piece.Count(c => c == '.') == 2)
        {
            reader.Skip(1);
            return Wrong($"\"{piece}\" is read as day and month by some and as month and day by others.");
        }

        if (piece.Count(c => c == '-') != 2) return null;
        reader.Skip(1);
        var parts = piece.Split('-');
        return LocalDatePattern.Iso.Parse($"{parts[0].PadLeft(4, '0')}-{parts[1].PadLeft(2, '0')}-{parts[2].PadLeft(2, '0')}") is { Success: true } read
            ? new(read.Value)
            : Wrong($"There is no day {piece}.");
    }

    private static DayRead? Named(Reader reader, LocalDate today, bool coming)
    {
        var (month, day, taken) = (0, 0, 0);
        if (Whole(reader.Next) is { } first)
        {
            taken = Endings.Contains(reader.At(1)) ? 2 : 1;
            if (reader.At(taken) == "of") taken++;
            (day, month) = (first, Find(Months, reader.At(taken)) + 1);
            taken++;
        }
        else if (Find(Months, reader.Next) is >= 0 and var found && Whole(reader.At(1)) is { } second)
        {
            (day, month, taken) = (second, found + 1, Endings.Contains(reader.At(2)) ? 3 : 2);
        }

        if (month == 0) return null;
        int? year = Whole(reader.At(taken)) is >= 1900 and <= 2999 and var y ? y : null;
        reader.Skip(taken + (year is null ? 0 : 1));
        IEnumerable<int> years = year is { } given ? [given] : Enumerable.Range(0, 9).Select(i => today.Year + (coming ? i : -i));
        foreach (var candidate in years)
        {
            if (day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(candidate, month)) continue;
            var read = new LocalDate(candidate, month, day);
            if (year is not null || (coming ? read > today : read <= today)) return new(read);
        }

        var says = $"{day} {char.ToUpperInvariant(Months[month - 1][0])}{Months[month - 1][1..]}{(year is null ? "" : $" {year}")}";
        return Wrong($"There is no day {says}.");
    }

    /// <summary>By the whole name or its first three letters and more: mar, sept, thurs.</summary>
    private static int Find(ImmutableArray<string> names, string word)
    {
        if (word.Length < 3) return -1;
        for (var i = 0; i < names.Length; i++)
        {
            if (names[i].StartsWith(word, StringComparison.Ordinal)) return i;
        }

        return -1;
    }

    private static int? Whole(string piece) => int.TryParse(piece, System.Globalization.NumberStyles.None, null, out var number) ? number : null;

    private static DayRead Wrong(string why) => new(default, new Refusal("day", $"{why} {HowTo}"));
}
