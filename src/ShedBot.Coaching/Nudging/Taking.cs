using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>Takes answers to reminders. Pure; the same answer taken twice does no more than once.</summary>
public static class Taking
{
    private static readonly LocalDateTimePattern Moment = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM 'at' HH:mm");

    /// <summary>Asks whether the member wants to be reminded, once, in the place where they are talking anyway.</summary>
    /// <returns>Null when they were asked before, or have said so.</returns>
    public static Taken? AskOnce(Rider rider, string clubZone, DateTimeOffset now) => rider.Consent != Consent.NotAsked
        ? null
        : new Taken(rider with { Consent = Consent.Asked, Version = rider.Version + 1 }, [], NudgeCards.MayI(new RiderClock(rider, clubZone, now).Today));

    /// <summary>An answer to a reminder; any answer is a sign of life.</summary>
    /// <param name="bikes">All of the member's bikes.</param>
    /// <param name="until">With <see cref="NudgeVerb.NotRiding"/>: the first day of riding again; null: till they say.</param>
    public static Taken Take(
        Rider rider, ImmutableArray<BikeProfile> bikes, NudgeAnswer answer, KnowledgeBase knowledge, string clubZone, DateTimeOffset now, LocalDate? until = null)
    {
        var clock = new RiderClock(rider, clubZone, now);
        var heard = Nudger.Heard(rider, now);
        var bike = bikes.FirstOrDefault(b => NudgeAnswer.ShortOf(b) == answer.Bike);
        var rule = knowledge.Service.GetValueOrDefault(answer.Subject);
        return answer.Verb switch
        {
            NudgeVerb.Agree => new Taken(
                RiderWishes.Agree(rider, now),
                [],
                NudgeCards.Said("Good, I'll remind you", $"Around {Clock(rider.Quiet.Outside(rider.Preferred))} your time, when something is due.")),
            NudgeVerb.Decline => new Taken(
                RiderWishes.Decline(rider, now), [], NudgeCards.Said("No reminders, then", "Your plan is there whenever you ask for it.")),
            NudgeVerb.GoOn => new Taken(heard, [], NudgeCards.Said("Good, I go on")),
            NudgeVerb.AllDone => Done(heard, bikes, Open(rider, bikes, answer, knowledge, clock), clock),
            NudgeVerb.DueDone => DueDone(heard, bikes, Open(rider, bikes, answer, knowledge, clock), answer.Digest, clock),
            NudgeVerb.Tonight or NudgeVerb.Weekend or NudgeVerb.NextWeek => Later(heard, Open(rider, bikes, answer, knowledge, clock), answer.Verb, clock),
            NudgeVerb.NotRiding => Rest(heard, bikes, until, clock),
            NudgeVerb.OpenCase when bike is not null && knowledge.Complaints.TryGetValue(answer.Subject, out var complaint) => new Taken(
                heard, [], NudgeCards.Said($"The trouble is that {complaint.Called}", "Let's look for the cause."), new TroubleShown(bike.Id, answer.Subject)),
            NudgeVerb.Rode when bike is not null => Ride(heard, bike, clock),
            _ when bike is null || rule is null => new Taken(heard, [], NudgeCards.Said("I don't know that any more", "The bike or the task is gone since.")),
            NudgeVerb.Done => Done(heard, bikes, [.. Open(rider, bikes, answer, knowledge, clock).Where(d => d.Bike == bike && d.Item.Rule.Id == rule.Id)], clock),
            NudgeVerb.StopTask => new Taken(
                heard with { Stopped = [.. heard.Stopped.Add(rule.Id).Distinct().Order(StringComparer.Ordinal)] },
                [],
                NudgeCards.Said($"No more reminders of this: {rule.Called}", "It stays in your plan.")),
            NudgeVerb.Look => new Taken(heard, [], Look(bike, rule, DueItem.Of([bike], knowledge, clock.Today, clock.Zone), answer.Digest, clock.Today)),
            NudgeVerb.HowTo => new Taken(heard, [], NudgeCards.HowTo(bike, rule, answer.Digest)),
            NudgeVerb.Trouble => new Taken(heard, [], NudgeCards.WhichTrouble(bike, rule, knowledge, answer.Digest)),
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer, "A new kind of answer needs a way to be taken."),
        };
    }

    /// <summary>What the digest told and is still to be done: what was done since is done, however late the press.</summary>
    private static ImmutableArray<DueItem> Open(Rider rider, ImmutableArray<BikeProfile> bikes, NudgeAnswer answer, KnowledgeBase knowledge, RiderClock clock)
    {
        var told = rider.Told.Where(t => t.Day >= answer.Digest).Select(t => t.DueKey).ToHashSet(StringComparer.Ordinal);
        return [.. DueItem.Of(bikes, knowledge, clock.Today, clock.Zone).Where(d => told.Contains(d.Key))];
    }

    private static Taken Done(Rider heard, ImmutableArray<BikeProfile> bikes, ImmutableArray<DueItem> open, RiderClock clock)
    {
        if (open.IsEmpty) return new Taken(heard, [], NudgeCards.Said("That is noted already"));
        var changed = ImmutableArray.CreateBuilder<BikeProfile>();
        var (noted, refused) = (new List<string>(), new List<string>());
        foreach (var bike in bikes)
        {
            var after = bike;
            foreach (var due in open.Where(d => d.Bike == bike))
            {
                var entry = new ServiceDone(due.Item.Rule.Id, clock.Today, clock.Now, "told", null);
                var done = DoneLog.Add(after.Done, entry, clock.Today, Fitting.DayOf(after));
                if (done.Value is { } all) after = after with { Done = all.All };
                if (done.Refused is { } why) refused.Add(why.Say);
                else noted.Add(due.Item.Rule.Called);
            }

            if (after != bike) changed.Add(after with { Version = bike.Version + 1 });
        }

        return new Taken(
            heard, changed.ToImmutable(),
            noted.Count > 0
                ? NudgeCards.Said($"Noted as done: {Say.Join(noted)}", "If that was a slip, take it back.")
                : NudgeCards.Said("That is noted already", string.Join(' ', refused.Distinct())));
    }

    /// <summary>What was coming up is not done with it: the member wants to hear of it again once it is due.</summary>
    private static Taken DueDone(Rider heard, ImmutableArray<BikeProfile> bikes, ImmutableArray<DueItem> open, LocalDate digest, RiderClock clock)
    {
        var coming = open.Where(d => d.Item.Expected > digest).ToImmutableArray();
        var again = coming.Select(d => d.Key).ToHashSet(StringComparer.Ordinal);
        return Done(heard with { Told = heard.Told.RemoveAll(t => t.Day == digest && again.Contains(t.DueKey)) }, bikes, open.RemoveRange(coming), clock);
    }

    private static Taken Later(Rider heard, ImmutableArray<DueItem> open, NudgeVerb verb, RiderClock clock)
    {
        if (open.IsEmpty) return new Taken(heard, [], NudgeCards.Said("Nothing of that is due any more"));
        var (until, tonight) = Postponing.Until(verb, clock);
        var keys = open.Select(d => d.Key).ToHashSet(StringComparer.Ordinal);
        return new Taken(
            heard with { Later = [.. heard.Later.Where(l => !keys.Contains(l.DueKey)), .. open.Select(d => new Postponed(d.Key, until, tonight))] },
            [],
            NudgeCards.Said($"Good, I'll come back to it on {Moment.Format(Instant.FromDateTimeOffset(until).InZone(clock.Zone).LocalDateTime)}"));
    }

    /// <summary>A day of riding without distance or time: how far is learnt from the days on which it is told.</summary>
    private static Taken Ride(Rider heard, BikeProfile bike, RiderClock clock)
    {
        if (bike.Riding.On(clock.Today) is not null) return new Taken(heard, [], NudgeCards.Said("Today's ride is noted already"));
        var logged = bike.Riding.Log(new RiddenDay(clock.Today, null, null, Weather.Dry), clock.Today, Fitting.DayOf(bike), clock.Now);
        return logged.Value is { } riding
            ? new Taken(heard, [bike with { Riding = riding, Version = bike.Version + 1 }], NudgeCards.Said($"Noted: a ride on {Dates.Say(clock.Today)}", "Tell me how far when you know it, and I reckon better."))
            : new Taken(heard, [], NudgeCards.Said("Not noted", logged.Refused!.Say));
    }

    private static Taken Rest(Rider heard, ImmutableArray<BikeProfile> bikes, LocalDate? until, RiderClock clock)
    {
        var changed = ImmutableArray.CreateBuilder<BikeProfile>();
        foreach (var bike in bikes)
        {
            // The same press again must not begin another break.
            if (bike.Riding.BreakOn(clock.Today.PlusDays(1)) is { } on && on.Until == until) continue;
            var rest = bike.Riding.Break(clock.Today, until, clock.Today, clock.Now);
            if (rest.Refused is { } refused) return new Taken(heard, [], NudgeCards.Said("That break cannot be", refused.Say));
            changed.Add(bike with { Riding = rest.Must, Version = bike.Version + 1 });
        }

        var till = until is { } day ? $"till {Dates.Say(day)}" : "till you say so";
        return new Taken(heard, changed.ToImmutable(), NudgeCards.Said($"No reminders {till}", "A ride you log ends it too."));
    }

    private static Card Look(BikeProfile bike, Knowledge.Rules.ServiceRule rule, ImmutableArray<DueItem> items, LocalDate digest, LocalDate today) =>
        items.FirstOrDefault(d => d.Item.Rule.Id == rule.Id) is { } due ? NudgeCards.Task(due, digest, today) : NudgeCards.HowTo(bike, rule, digest);

    private static string Clock(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
