using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Logbook;

/// <summary>
/// Reads a typed line as a request of the logbook: a small, strict grammar. A line that is not wholly understood is left to the coach, so that a trouble that
/// begins with "rode" stays a trouble; it is refused, with what to write instead, only where it cannot be one.
/// </summary>
public static class BikeWords
{
    /// <summary>"Done" with more words than this is a story.</summary>
    private const int MostDoneWords = 4;

    private static readonly ImmutableHashSet<string> Filler = ["on", "in", "the", "for", "about", "of", "and", "a", "it", "was", "some", "just", "around", "roughly", "roads", "to", "work", "home", "town", "back"];

    private static readonly ImmutableDictionary<string, Weather> Weathers = new Dictionary<string, Weather>(StringComparer.Ordinal)
    {
        ["dry"] = Weather.Dry,
        ["wet"] = Weather.Wet,
        ["rain"] = Weather.Wet,
        ["rainy"] = Weather.Wet,
        ["mud"] = Weather.Wet,
        ["muddy"] = Weather.Wet,
        ["dust"] = Weather.Dusty,
        ["dusty"] = Weather.Dusty,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static readonly ImmutableArray<string> Plans = ["plan", "the plan", "my plan", "service plan", "what is due", "what's due", "whats due", "what is next", "service", "my service", "next service",
        "when is my next service", "what needs doing", "what needs doing on my bike"];

    private static readonly ImmutableArray<string> Undos = ["undo", "undo that", "undo it", "undo the last", "undo last"];

    private static readonly ImmutableArray<string> Wholes = ["plan all", "whole plan", "the whole plan", "all of the plan"];

    /// <param name="at">The time of the line; "today" is the rider's own day then.</param>
    /// <param name="loose">True where no question is open: a task may then be named by one of its words, and a ride by "rode" alone.</param>
    /// <returns>Null when the line is none of the logbook's.</returns>
    public static Result<BikeRequest>? Read(string line, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at, bool loose)
    {
        if (SheetWords.Read(line, knowledge, speaker, at, loose) is { } sheet) return sheet;
        if (!Tokens.Whole(line.TrimEnd().TrimEnd('?'))) return null;
        var today = speaker.DayOf(at);
        var reader = new Reader(Tokens.Of(line));
        var plain = string.Join(' ', Tokens.Of(line));
        if (Plans.Contains(plain)) return (BikeRequest)new ShowPlan(Whole: false);
        if (Wholes.Contains(plain)) return (BikeRequest)new ShowPlan(Whole: true);
        if (Undos.Contains(plain)) return (BikeRequest)new UndoEntry();
        if (plain is "riding again") return (BikeRequest)new RidingAgainEntry();
        if (Timeline(plain) is { } look) return (BikeRequest)new ShowTimeline(look);
        if (plain is "export") return (BikeRequest)new TakeCopy();
        if (reader.Take("how")) return How(line, knowledge, loose);
        if (line.Contains('?', StringComparison.Ordinal)) return null;
        if (reader.Take("i rode") || reader.Take("rode") || reader.Take("i went for a ride") || reader.Take("went for a ride")) return Ride(reader, today, bare: loose);
        // These begin sentences of other kinds too, so an amount must follow; so must it where only an amount is written, and no question is open.
        if ((reader.Take("ride") || reader.Take("log") || reader.Take("logged") || loose) && AmountAhead(reader)) return Ride(reader, today, bare: false);
        if (reader.Take("i am not riding") || reader.Take("i'm not riding") || reader.Take("not riding")) return Rest(reader, today);
        if (reader.Take("kit fitted") || reader.Take("the kit was fitted") || reader.Take("i fitted the kit") || reader.Take("i just fitted the kit") || reader.Take("just fitted the kit")) return Fitted(reader, today);
        // "Fitted new pads" is for the coach; only a day makes it the kit.
        if (reader.Take("fitted") && Fitted(reader, today) is { Value: not null } fitted) return fitted;
        if (reader.Take("pace")) return PaceWords.Read(reader, must: true);
        if (reader.Take("i ride") || reader.Take("i usually ride") || reader.Take("about")) return PaceWords.Read(reader, must: false);
        return reader.Take("done") || reader.Take("did") ? Done(line, knowledge, today, loose) : null;
    }

    private static PictureLook? Timeline(string plain) => plain switch
    {
        "timeline" or "the timeline" or "my timeline" or "timeline dark" => PictureLook.Dark,
        "timeline light" => PictureLook.Light,
        _ => null,
    };

    private static bool AmountAhead(Reader reader) => Reader.Number(reader.Next) is not null && AmountWords.IsUnit(reader.At(1));

    /// <summary>How a day's riding was, from one word.</summary>
    public static Weather? WeatherOf(string word) => Weathers.TryGetValue(word, out var weather) ? weather : null;

    /// <param name="bare">False where "rode home" may answer what is asked: then an amount, a day or the weather must be told.</param>
    private static Result<BikeRequest>? Ride(Reader reader, LocalDate today, bool bare)
    {
        (double? km, double? hours, Weather? weather, LocalDate? day, Refusal? wrong) = (null, null, null, null, null);
        var unknown = 0;
        while (!reader.AtEnd)
        {
            if (DayWords.Read(reader, today, coming: false) is { } read)
            {
                wrong ??= read.Refused ?? (day is null ? null : new Refusal("twice", "That names two days. One ride at a time, please."));
                day = read.Day;
            }
            else if (AmountWords.Read(reader) is { } amount)
            {
                var twice = (amount.Kilometres is not null && km is not null) || (amount.Hours is not null && hours is not null);
                wrong ??= amount.Refused ?? (twice ? new Refusal("twice", "That names two distances or two times. One ride at a time, please.") : null);
                (km, hours) = (amount.Kilometres ?? km, amount.Hours ?? hours);
            }
            else if (WeatherOf(reader.Next) is { } told)
            {
                weather = told;
                reader.Skip(1);
            }
            else if (Reader.Number(reader.Next) is not null)
            {
                // One word that is no unit is a slip of the finger; more of them are a story, and that is for the coach.
                var known = reader.At(1).Length == 0 || WeatherOf(reader.At(1)) is not null || Filler.Contains(reader.At(1));
                wrong ??= new Refusal("unit", $"{reader.Next}{(known ? "" : " " + reader.At(1))} what? {AmountWords.HowTo}");
                reader.Skip(known ? 1 : 2);
                unknown += known ? 0 : 1;
            }
            else if (reader.Next.Contains(':', StringComparison.Ordinal))
            {
                wrong ??= new Refusal("unit", $"{reader.Next} can be a time of the day. {AmountWords.HowTo}");
                reader.Skip(1);
            }
            else if (!reader.TakeAny(Filler))
            {
                return null;
            }

            if (unknown > 1) return null;
        }

        if (wrong is not null) return wrong;
        if (!bare && km is null && hours is null && weather is null && day is null) return null;
        return (BikeRequest)new RideEntry(new RiddenDay(day ?? today, km, hours, weather ?? Weather.Dry));
    }

    private static Result<BikeRequest>? Rest(Reader reader, LocalDate today)
    {
        if (reader.AtEnd) return (BikeRequest)new RestEntry(null);
        if (!(reader.Take("till") || reader.Take("until") || reader.Take("before"))) return null;
        if ((reader.Take("i say") || reader.Take("further notice")) && reader.AtEnd) return (BikeRequest)new RestEntry(null);
        var before = reader.Next;
        if (DayWords.Read(reader, today, coming: true) is { } read && reader.AtEnd) return Of(read, day => new RestEntry(day));
        // "not riding till the clutch is mended" is for the coach.
        if (!char.IsAsciiDigit(before.FirstOrDefault())) return null;
        return new Refusal("day", $"Till which day? {DayWords.HowTo} Or: not riding till I say.");
    }

    private static Result<BikeRequest> Fitted(Reader reader, LocalDate today)
    {
        _ = reader.Take("on");
        return DayWords.Read(reader, today, coming: false) is { } read && reader.AtEnd
            ? Of(read, day => new FittedEntry(day))
            : new Refusal("day", $"When was the kit fitted? {DayWords.HowTo}");
    }

    private static Result<BikeRequest> Of(DayRead read, Func<LocalDate, BikeRequest> request)
    {
        if (read.Refused is { } wrong) return wrong;
        return request(read.Day);
    }

    private static Result<BikeRequest>? Done(string line, KnowledgeBase knowledge, LocalDate today, bool loose)
    {
        var pieces = Tokens.Of(line);
        // The day stands at the end, and a task may have numbers in its name: the longest task wins.
        for (var end = pieces.Length; end > 1; end--)
        {
            var reader = new Reader(pieces[end..]);
            _ = reader.Take("on");
            var day = reader.AtEnd ? new DayRead(today) : DayWords.Read(reader, today, coming: false);
            if (day is null || !reader.AtEnd) continue;
            if (Task(string.Join(' ', pieces[1..end]), knowledge, loose) is not { } found) continue;
            if (found.Refused is { } unclear) return unclear;
            return Of(day, d => new DoneEntry(found.Must.Id, d));
        }

        // Where nothing is asked, a short "done ..." can only be a task that goes by another name.
        var name = string.Join(' ', pieces[1..]);
        if (!loose || pieces[0] != "done" || pieces.Length > MostDoneWords || !TaskWords.Names(name)) return null;
        var named = TaskWords.Find(knowledge, name);
        return named.Refused is { } none ? (Result<BikeRequest>?)none : null;
    }

    private static Result<BikeRequest>? How(string line, KnowledgeBase knowledge, bool loose)
    {
        var reader = new Reader(Tokens.Of(line));
        var taken = reader.Take("how do i do") ? 4 : reader.Take("how do i") ? 3 : reader.Take("how to") ? 2 : 1;
        // "How do I" and "how to" are asked of the coach too, so there the task must be named as it is called.
        var name = string.Join(' ', Tokens.Of(line)[taken..]);
        if (taken > 1) return TaskWords.Exactly(knowledge, name) is { } named ? (BikeRequest)new ShowHow(named.Id) : (Result<BikeRequest>?)null;
        if (Task(name, knowledge, loose) is not { } found) return null;
        if (found.Refused is { } unclear) return unclear;
        return (BikeRequest)new ShowHow(found.Must.Id);
    }

    /// <returns>Null when no task is meant.</returns>
    private static Result<ServiceRule>? Task(string text, KnowledgeBase knowledge, bool loose)
    {
        if (TaskWords.Exactly(knowledge, text) is { } exact) return exact;
        var matching = TaskWords.Matching(knowledge, text);
        // While something is asked, one word could be an answer: two that fit a single task are not.
        if (!loose) return matching is [var only] && TaskWords.Named(text) > 1 ? only : (Result<ServiceRule>?)null;
        return matching.IsEmpty ? (Result<ServiceRule>?)null : TaskWords.Find(knowledge, text);
    }
}
