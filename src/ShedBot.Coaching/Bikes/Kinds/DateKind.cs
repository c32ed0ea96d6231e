using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>A day that has been, kept as "2026-05-03". Of a month alone its first day is taken, and so it is shown.</summary>
public sealed record DateKind : FieldKind
{
    private const int MonthsInYear = 12, MostBack = 40;

    private static readonly string[] Months = CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[..MonthsInYear];

    public override Result<string> Read(string text, Writer by)
    {
        var words = text.Trim().ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        // What is not known to the day is said so.
        if (words is ["about" or "around" or "roughly" or "maybe" or "perhaps", .. var rest]) words = rest;
        if ((Ago(words, by.Today) ?? MonthOf(words, by.Today)) is { } about) return Checked(about, by);
        var read = DayWords.Whole(string.Join(' ', words), by.Today, coming: false);
        return read.Refused is null ? Checked(read.Day, by) : new Refusal(Code, read.Refused.Say.Replace("yesterday or sunday", "march 2026 or 3 months ago", StringComparison.Ordinal));
    }

    public override string Show(string value, Units units) => value;

    private static Result<string> Checked(LocalDate day, Writer by)
    {
        if (day > by.Today) return new Refusal(Code, $"{Dates.Say(day)} is still to come.");
        return day < by.Today.PlusYears(-MostBack) ? new Refusal(Code, $"{Dates.Say(day)} is too long ago for such a part.") : Dates.Iso(day);
    }

    /// <summary>"3 months ago", "a year ago".</summary>
    private static LocalDate? Ago(string[] words, LocalDate today)
    {
        if (words is not [var many, var unit, "ago"]) return null;
        int? number = many is "a" or "an" or "one" ? 1 : int.TryParse(many, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n <= MostBack * MonthsInYear ? n : null;
        return (number, unit) switch
        {
            ({ } months, "month" or "months") => today.PlusMonths(-months),
            ({ } years, "year" or "years") => today.PlusYears(-years),
            (1, "week") => today.PlusWeeks(-1),
            _ => null,
        };
    }

    /// <summary>"march", "march 2026", "2026-03": the first of it; of a month alone the last one that has been.</summary>
    private static LocalDate? MonthOf(string[] words, LocalDate today)
    {
        if (words is [['0' or '1' or '2', ..] iso] && iso.Split('-') is [{ Length: 4 } y, { Length: 2 } m] && Whole(y) is { } isoYear && Whole(m) is >= 1 and <= MonthsInYear and var isoMonth)
            return new LocalDate(isoYear, isoMonth, 1);
        var name = words is ["in", ..] ? words[1..] : words;
        if (name is not ([_] or [_, _]) || name[0].Length < 3) return null;
        var month = Array.FindIndex(Months, w => w.StartsWith(name[0], StringComparison.OrdinalIgnoreCase)) + 1;
        if (month == 0) return null;
        if (name is [_, var year]) return Whole(year) is >= 1900 and <= 2999 and var given ? new LocalDate(given, month, 1) : null;
        var first = new LocalDate(today.Year, month, 1);
        return first > today ? first.PlusYears(-1) : first;
    }

    private static int? Whole(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0 ? n : null;
}
