using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Nudging.Simulated;

/// <summary>
/// A year of one invented member, in steps of half an hour: rides, entries, reminders and what they make of them. Beside the bikes as they are logged
/// stand the same bikes with every ride there truly was; what is due in truth is taken from those.
/// </summary>
internal sealed class RiderLife
{
    public const int Days = 365;

    public static readonly LocalDate First = new(2026, 1, 5);

    private readonly ClubRider kind;
    private readonly KnowledgeBase knowledge;
    private readonly Random random, riding;
    private readonly Bundling bundling;
    private readonly HashSet<string> shown = new(StringComparer.Ordinal);
    private readonly Dictionary<string, LocalDate> foretold = new(StringComparer.Ordinal);
    private readonly HashSet<string> trulyDue = new(StringComparer.Ordinal);
    private Rider rider;
    private ImmutableArray<BikeProfile> bikes, truth;
    private (DateTimeOffset At, Sent Message)? toAnswer;
    private bool triedAgain;

    public RiderLife(ClubRider kind, int number, KnowledgeBase knowledge, Bundling bundling)
    {
        (this.kind, this.knowledge, this.bundling) = (kind, knowledge, bundling);
        // Of their own each, so that they ride the same whatever they are told.
        (random, riding) = (new Random(7000 + number), new Random(9000 + number));
        var member = new MemberId($"invented/{number}");
        bikes = truth =
        [
            .. Enumerable.Range(1, kind.Bikes).Select(i => Fitting.Set(BikeProfile.New(new BikeId($"{member}/{i}"), member), First, First, Noon(First), "told").Must),
        ];
        // Whoever logs nothing has said once how much they ride; else nothing would ever be known to be due.
        if (kind.Logs == 0) bikes = [.. bikes.Select(b => b with { Riding = b.Riding.StatePace(new StatedPace(3.5, null, null, First), Noon(First)).Must })];
        rider = Rider.New(member) with { Preferred = new LocalTime(16 + (number % 4), 30) };
        if (number % 2 == 0) rider = rider.MentionIn("shed-talk");
        rider = Taking.AskOnce(rider, "Europe/Lisbon", Noon(First))!.Rider;
        if (kind.Agrees) rider = Taking.Take(rider, bikes, new NudgeAnswer(NudgeVerb.Agree, First), knowledge, "Europe/Lisbon", Noon(First)).Rider;
    }

    public List<Sent> Messages { get; } = [];

    /// <summary>Messages that the member did not bring about by putting something off, or by asking for it at an hour.</summary>
    public IEnumerable<Sent> Unasked => Messages.Where(m => !m.Mention && !m.Keys.Any(k => Asked.Any(a => a.Key == k && a.Asked < a.Until && a.Until <= m.At)));

    /// <summary>Due keys that were asked for again, with the moment from which they may come.</summary>
    public List<(string Key, DateTimeOffset Asked, DateTimeOffset Until)> Asked { get; } = [];

    /// <summary>All due keys that were due by the log on some evening, with the first of those days.</summary>
    public Dictionary<string, LocalDate> FirstDue { get; } = new(StringComparer.Ordinal);

    /// <summary>What was due and held back for a reason that does not pass by itself, as silence or a rest.</summary>
    public HashSet<string> HeldBack { get; } = new(StringComparer.Ordinal);

    /// <summary>Evenings on which something due was not told yet, by reason.</summary>
    public Dictionary<WithheldFor, int> Withheld { get; } = [];

    /// <summary>The due dates of which the member was told, each as it was told first.</summary>
    public Dictionary<string, Telling> Tellings { get; } = new(StringComparer.Ordinal);

    /// <summary>How many evenings in a row each key was neither told nor withheld for a lasting reason.</summary>
    public Dictionary<string, int> Waited { get; } = new(StringComparer.Ordinal);

    public int LongestWait { get; private set; }

    /// <summary>Days from the true due day to the day expected two weeks before.</summary>
    public List<int> Errors { get; } = [];

    public int Notes { get; private set; }

    public RiderLife Live()
    {
        var wet = false;
        for (var i = 0; i < Days; i++)
        {
            var day = First.PlusDays(i);
            if (i % 7 == 0) wet = riding.NextDouble() < 0.3;
            Day(i, day, wet);
        }

        return this;
    }

    private DateTimeZone Zone => DateTimeZoneProviders.Tzdb[rider.Zone ?? "Europe/Lisbon"];

    private void Day(int number, LocalDate day, bool wet)
    {
        Habits(number, day);
        var rides = riding.NextDouble() < kind.Chance((int)day.DayOfWeek - 1, wet) && !Rests(day);
        var (logged, late, bike) = (riding.NextDouble() < kind.Logs, riding.NextDouble() < 0.2, riding.Next(kind.Bikes));
        var ride = new RiddenDay(day, Math.Round(4 + (12 * riding.NextDouble()), 1), Math.Round(0.2 + (0.7 * riding.NextDouble()), 2), wet ? Weather.Wet : Weather.Dry);
        for (var at = Zone.AtStartOfDay(day).ToDateTimeOffset(); ; at = at.AddMinutes(30))
        {
            var local = Instant.FromDateTimeOffset(at).InZone(Zone).LocalDateTime;
            if (local.Date != day) break;
            if (rides && local.TimeOfDay == new LocalTime(15, 0)) truth = Log(truth, bike, ride, at);
            if (rides && logged && local.TimeOfDay == new LocalTime(late ? 22 : 15, 30)) Enter(bike, ride, at);
            if (rider.NextLook <= at) Look(at, local);
            if (toAnswer is { } due && due.At <= at) Answer(due.Message, at);
        }

        Evening(number, day);
    }

    private void Habits(int number, LocalDate day)
    {
        var at = Noon(day);
        if (kind.WinterTold && Rests(day) && !Rests(day.PlusDays(-1))) Rest(at, new LocalDate(day.Month >= 11 ? day.Year + 1 : day.Year, 3, 1));
        if (kind.Fussy && number == 200) Rest(at, day.PlusDays(21));
        if (kind.Fussy && number == 100) Press(new NudgeAnswer(NudgeVerb.StopTask, day, NudgeAnswer.ShortOf(bikes[0]), "oil-chain"), at);
        if (number % 100 == 99 && number / 100 < kind.Moves.Length) rider = rider.MoveTo(kind.Moves[number / 100], at).Must;
        if (kind.ClosedFrom is not { } closed || number <= closed + 30) return;
        var (after, note) = Fallback.AtNextCommand(rider, "Europe/Lisbon", at);
        rider = after;
        if (note is not null) Notes++;
        if (number == closed + 100 && !triedAgain)
        {
            triedAgain = true;
            Press(new NudgeAnswer(NudgeVerb.Agree, day), at);
        }
    }

    private void Look(DateTimeOffset at, LocalDateTime local)
    {
        var decided = Nudger.Decide(rider, bikes, knowledge, "Europe/Lisbon", at, bundling);
        var agreed = rider.Consent == Consent.Given;
        rider = decided.After;
        Assert.False(rider.NextLook <= at, $"{rider.Member} is looked at again and again at {local}.");
        if (decided.Say is not { } say) return;
        var plan = DueItem.Of(bikes, knowledge, local.Date, Zone).ToDictionary(i => i.Key, StringComparer.Ordinal);
        Assert.All(say.DueKeys, key => Told(plan[key], local.Date, say));
        var refused = kind.ClosedFrom is { } from && local.Date >= First.PlusDays(from);
        var message = new Sent(at, local, say.DueKeys, say.Evening, agreed, false, rider.Quiet);
        if (!refused)
        {
            Messages.Add(message);
            shown.UnionWith(say.DueKeys);
            toAnswer = (at.AddMinutes(30 * random.Next(1, 40)), message);
            return;
        }

        (rider, var mention) = Fallback.Refused(rider, "Europe/Lisbon", at);
        shown.UnionWith(say.DueKeys);
        if (mention is not null) Messages.Add(message with { Keys = [], Mention = true });
    }

    /// <summary>Told on its day or later; or beforehand, near enough and together with something that is due or was asked for; or at the hour that the member named.</summary>
    private void Told(DueItem item, LocalDate day, Nudge say)
    {
        var early = Period.DaysBetween(day, item.Item.Expected!.Value);
        var again = Asked.Any(a => a.Key == item.Key);
        var along = early <= bundling.AheadDays && item.Item.Amount.Share >= 0.8
            && DueItem.Of(bikes, knowledge, day, Zone).Any(i => say.DueKeys.Contains(i.Key) && (i.IsDue(day) || Asked.Any(a => a.Key == i.Key)));
        Assert.True(early <= 0 || again || along, $"{item.Key} is told before its day.");
        if (early <= 0) FirstDue.TryAdd(item.Key, day);
        Tellings.TryAdd(item.Key, new Telling(day, Math.Max(0, early), item.Pressing));
    }

    private void Answer(Sent message, DateTimeOffset at)
    {
        toAnswer = null;
        var (does, day) = (random.NextDouble(), message.Local.Date);
        if (message.Asks)
        {
            if (kind.Does > 0) Press(new NudgeAnswer(NudgeVerb.GoOn, day), at);
        }
        else if (does < kind.Does)
        {
            // One in four has done only what was due, and is told of the rest once that is due.
            var told = rider.Told;
            Press(new NudgeAnswer(random.Next(4) == 0 ? NudgeVerb.DueDone : NudgeVerb.AllDone, day), at);
            Asked.AddRange(told.Except(rider.Told).Select(t => (t.DueKey, at, at)));
        }
        else if (does < kind.Does + kind.PutsOff)
        {
            Press(new NudgeAnswer((NudgeVerb)random.Next((int)NudgeVerb.Tonight, (int)NudgeVerb.NextWeek + 1), day), at);
            Asked.AddRange(rider.Later.Select(l => (l.DueKey, at, l.Until)));
        }
    }

    private void Press(NudgeAnswer answer, DateTimeOffset at, LocalDate? until = null)
    {
        var taken = Taking.Take(rider, bikes, answer, knowledge, "Europe/Lisbon", at, until);
        (rider, bikes) = (taken.Rider, [.. bikes.Select(b => taken.Bikes.FirstOrDefault(n => n.Id == b.Id) ?? b)]);
        truth = [.. truth.Zip(bikes, (t, b) => t with { Done = b.Done, Riding = t.Riding with { Breaks = b.Riding.Breaks } })];
    }

    private void Rest(DateTimeOffset at, LocalDate until) => Press(new NudgeAnswer(NudgeVerb.NotRiding, RiderDays.Of(at, Zone)), at, until);

    private void Enter(int bike, RiddenDay ride, DateTimeOffset at)
    {
        bikes = Log(bikes, bike, ride, at);
        rider = Nudger.Heard(rider, at);
    }

    private ImmutableArray<BikeProfile> Log(ImmutableArray<BikeProfile> all, int bike, RiddenDay ride, DateTimeOffset at) =>
        all.SetItem(bike, all[bike] with { Riding = all[bike].Riding.Log(ride, ride.Day, First, at).Must });

    /// <summary>What is due at the end of a day and was not told must have a reason, and one that passes must pass soon.</summary>
    private void Evening(int number, LocalDate day)
    {
        var at = Zone.AtLeniently(day + new LocalTime(23, 45)).ToDateTimeOffset();
        var reasons = Nudger.Decide(rider, bikes, knowledge, "Europe/Lisbon", at, bundling).Withheld.ToDictionary(w => w.DueKey, w => w.Why, StringComparer.Ordinal);
        foreach (var item in bikes.SelectMany(b => ServicePlan.Of(b, knowledge, day, Zone)).Where(IsDue))
        {
            FirstDue.TryAdd(item.DueKey, day);
            if (shown.Contains(item.DueKey)) continue;
            var why = reasons[item.DueKey];
            Withheld[why] = Withheld.GetValueOrDefault(why) + 1;
            var passing = why is WithheldFor.Quiet or WithheldFor.SpokenToday or WithheldFor.NotYet or WithheldFor.AskingFirst or WithheldFor.Gathering;
            Assert.True(why != WithheldFor.Gathering || !new DueItem(bikes[0], item).Pressing, $"{item.DueKey} presses and waits.");
            if (!passing) HeldBack.Add(item.DueKey);
            Assert.True(passing || why is not WithheldFor.Told, $"{item.DueKey} counts as told and was not.");
            LongestWait = Math.Max(LongestWait, Waited[item.DueKey] = passing ? Waited.GetValueOrDefault(item.DueKey) + 1 : 0);
        }

        foreach (var item in truth.SelectMany(b => ServicePlan.Of(b, knowledge, day, Zone)).Where(i => i.State is DueState.Due or DueState.Overdue && trulyDue.Add(i.DueKey)))
        {
            if (foretold.TryGetValue(item.DueKey, out var expected)) Errors.Add(Period.DaysBetween(day, expected));
        }

        if (number < 42 || number % 7 != 0) return;
        foreach (var item in bikes.SelectMany(b => ServicePlan.Of(b, knowledge, day, Zone)))
        {
            if (item.Expected is { } expected && expected <= day.PlusDays(21) && expected > day.PlusDays(7)) foretold.TryAdd(item.DueKey, expected);
        }
    }

    /// <summary>By the plan alone; a bike that rests may hold what would be due.</summary>
    private static bool IsDue(PlanItem item) =>
        item.State is DueState.Due or DueState.Overdue || (item.State == DueState.Waiting && item.Amount.Share >= 1);

    private bool Rests(LocalDate day) => kind.Winter && ((day.Month == 11 && day.Day >= 15) || day.Month is 12 or 1 or 2);

    private static DateTimeOffset Noon(LocalDate day) => new(day.Year, day.Month, day.Day, 12, 0, 0, TimeSpan.Zero);
}
