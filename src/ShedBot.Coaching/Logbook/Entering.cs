using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>A bike after an entry, and the entry in words.</summary>
/// <param name="Title">One line: "Noted: 12 km on 3 May 2026".</param>
/// <param name="CanBeUndone">False for what is put right by saying it anew.</param>
/// <param name="Follows">For facts of the sheet what follows from them; default for entries after which it is told what is due.</param>
public sealed record Entered(BikeProfile Bike, string Title, bool CanBeUndone, ImmutableArray<string> Follows = default);

/// <summary>Makes entries. Pure: the same bike, entry and time give the same bike.</summary>
public static class Entering
{
    /// <returns>The bike after, or why the entry cannot be made; nothing is changed then.</returns>
    public static Result<Entered> Make(BikeProfile bike, BikeEntry entry, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset now)
    {
        var today = speaker.DayOf(now);
        now = After(bike, now);
        return entry switch
        {
            RideEntry e => Ride(bike, e.Ride, speaker, today, now),
            RestEntry e => With(bike, bike.Riding.Break(today, e.Until, today, now), b => b.Riding.Last!.What),
            RidingAgainEntry => With(bike, bike.Riding.RideAgain(today, now), _ => "riding again"),
            PaceEntry e => With(
                bike, bike.Riding.StatePace(new StatedPace(e.DaysPerWeek, e.Kilometres, e.Hours, today), now), b => PaceOf(b.Riding.Pace!, speaker)),
            DoneEntry e => Done(bike, e, knowledge, today, now),
            FittedEntry e => Fitting.Set(bike, e.Day, today, now, "told") switch
            {
                { Refused: { } refused } => refused,
                var set => new Entered(set.Must, $"Noted: kit fitted on {Dates.Say(e.Day)}", CanBeUndone: false),
            },
            TellEntry e => Tell(bike, e.Facts, knowledge, speaker, now),
            UndoEntry => Undo(bike, knowledge, now),
            _ => throw new ArgumentOutOfRangeException(nameof(entry), entry, "A new kind of entry needs a way to be made."),
        };
    }

    /// <returns>As in "about 4 days a week, 10 km each".</returns>
    internal static string PaceOf(StatedPace pace, Speaker speaker)
    {
        var days = Amounts.Number(pace.DaysPerWeek);
        var each = Amounts.Both(pace.KilometresPerDay, pace.HoursPerDay, speaker.Units);
        return $"about {days} {(days == "1" ? "day" : "days")} a week{(each.Length > 0 ? $", {each} each" : "")}";
    }

    /// <returns>As in "12 km in the wet"; "a ride" when neither distance nor time is told.</returns>
    internal static string RideOf(RiddenDay ride, Speaker speaker)
    {
        var both = Amounts.Both(ride.Kilometres, ride.Hours, speaker.Units);
        return (both.Length > 0 ? both : "a ride") + ride.Weather switch { Weather.Wet => " in the wet", Weather.Dusty => " in the dust", _ => "" };
    }

    private static Result<Entered> Ride(BikeProfile bike, RiddenDay ride, Speaker speaker, LocalDate today, DateTimeOffset now)
    {
        var logged = bike.Riding.Log(ride, today, Fitting.DayOf(bike), now);
        if (logged.Refused is { } refused) return refused;
        var day = logged.Must.On(ride.Day)!;
        var all = bike.Riding.On(ride.Day) is null ? "" : $" (that day so far: {RideOf(day, speaker)})";
        return new Entered(bike with { Riding = logged.Must }, $"Noted: {RideOf(ride, speaker)} on {Dates.Say(ride.Day)}{all}", CanBeUndone: true);
    }

    private static Entered Tell(BikeProfile bike, ImmutableArray<FactTold> facts, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset now)
    {
        var after = Telling.Tell(bike, facts, now, Telling.Told);
        var (before, figures) = (SheetFigures.Of(bike, speaker.Units), SheetFigures.Of(after, speaker.Units));
        return new Entered(after, $"Noted: {Say.Join([.. facts.Select(f => FactOf(f, bike, knowledge, speaker))])}", CanBeUndone: false, [.. figures.Except(before)]);
    }

    /// <returns>As in "bar length 18.2 mm (18.4 mm before)".</returns>
    private static string FactOf(FactTold fact, BikeProfile before, KnowledgeBase knowledge, Speaker speaker)
    {
        var field = BikeSheet.Find(knowledge, fact.Field);
        string Shown(string value) => field?.Kind.Show(value, speaker.Units) ?? value;
        var old = before.Facts.GetValueOrDefault(fact.Field)?.Value;
        return $"{field?.Called ?? fact.Field} {(fact.Value is { } value ? Shown(value) + (field?.Kind.Doubt(value) is { } open ? $", {open}" : "") : "not known")}{(old is null || old == fact.Value ? "" : $" ({Shown(old)} before)")}";
    }

    private static Result<Entered> Done(BikeProfile bike, DoneEntry entry, KnowledgeBase knowledge, LocalDate today, DateTimeOffset now)
    {
        if (!knowledge.Service.TryGetValue(entry.Task, out var rule)) return new Refusal("task", "I do not know that task any more.");
        if (rule.BeforeEachRide) return new Refusal("each-ride", "Good. That one is for before every ride, so I keep no note of it.");
        var done = DoneLog.Add(bike.Done, new ServiceDone(rule.Id, entry.Day, now, "told", null), today, Fitting.DayOf(bike));
        if (done.Refused is { } refused) return refused;
        return new Entered(bike with { Done = done.Must.All }, $"Noted: {rule.Called}, done on {Dates.Say(entry.Day)}", CanBeUndone: true);
    }

    /// <summary>Later than any entry before, also where the clock stands still or has jumped back: the order of entries is told by their times.</summary>
    private static DateTimeOffset After(BikeProfile bike, DateTimeOffset now)
    {
        var times = bike.Done.TakeLast(1).Select(d => d.LoggedAt).Concat(bike.Riding.Last is { } last ? [last.At] : []);
        return times.Select(t => t.AddMilliseconds(1)).Append(now).Max();
    }

    /// <summary>Of a ride and a service the one that was entered later, and only once: what lies before it is not what the rider has in mind.</summary>
    private static Result<Entered> Undo(BikeProfile bike, KnowledgeBase knowledge, DateTimeOffset now)
    {
        var (ridden, done) = (bike.Riding.Last, bike.Done.IsEmpty ? null : bike.Done[^1]);
        if (done is not null && !(ridden?.At > done.LoggedAt))
        {
            var called = knowledge.Service.GetValueOrDefault(done.Task)?.Called ?? done.Task;
            var after = bike with { Done = DoneLog.Undo(bike.Done).Must.All, Riding = Spent(bike.Riding, now) };
            return new Entered(after, $"Taken back: {called}, done on {Dates.Say(done.Day)}", CanBeUndone: false);
        }

        if (ridden is null) return new Refusal("nothing", "There is no entry to take back.");
        if (ridden.What.Length == 0) return new Refusal("nothing", "Only the last entry can be taken back, and it has been.");
        var what = ridden.Day is { } day ? $"the last ride of {Dates.Say(day)}" : ridden.What;
        return new Entered(bike with { Riding = Spent(bike.Riding.Undo().Must, now) }, $"Taken back: {what}", CanBeUndone: false);
    }

    /// <summary>Marks that the last entry was taken back: an entry without words that changes nothing.</summary>
    private static RidingLog Spent(RidingLog log, DateTimeOffset now) => log with { Last = new RidingUndo(now, "", null, null, log.Breaks, log.Pace) };

    private static Result<Entered> With(BikeProfile bike, Result<RidingLog> riding, Func<BikeProfile, string> what)
    {
        if (riding.Refused is { } refused) return refused;
        var after = bike with { Riding = riding.Must };
        return new Entered(after, $"Noted: {what(after)}", CanBeUndone: true);
    }
}
