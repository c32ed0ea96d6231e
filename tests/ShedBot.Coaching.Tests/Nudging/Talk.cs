using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Service;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>An invented rider in Lisbon with an invented bike, and a clock that is set by hand. Intervals mean nothing.</summary>
internal sealed class Talk
{
    /// <summary>A Wednesday in summer: Lisbon is one hour ahead of UTC.</summary>
    public static readonly LocalDate June3 = new(2026, 6, 3);

    public Talk(params ServiceRule[] rules) => Knowledge = Yard.Rules(rules);

    public KnowledgeBase Knowledge { get; }

    public string ClubZone { get; set; } = "Europe/Lisbon";

    public Rider Rider { get; set; } = Rider.New(new MemberId("m1")) with { Consent = Consent.Given };

    public ImmutableArray<BikeProfile> Bikes { get; set; } = [Yard.Bike];

    public Decision Last { get; private set; } = null!;

    public static DateTimeOffset At(LocalDate day, int hour, int minute = 0, string zone = "Europe/Lisbon") =>
        DateTimeZoneProviders.Tzdb[zone].AtLeniently(day + new LocalTime(hour, minute)).ToDateTimeOffset();

    /// <summary>A task that falls due a number of days after it was done on the first of June.</summary>
    public static ServiceRule Due(string id, int day) => Yard.Task(id, Yard.Calendar(day - 1)) with { Called = id, Does = $"do {id}" };

    /// <summary>The same, and it does not wait for other things to be told with.</summary>
    public static ServiceRule Pressing(string id, int day) => Due(id, day) with { Hazard = "high" };

    /// <summary>Everything done on the first of June, so that <see cref="Due"/> falls due on its day of June.</summary>
    public Talk Fresh()
    {
        var first = new LocalDate(2026, 6, 1);
        var bike = Knowledge.Service.Keys.Aggregate(Yard.Bike.Rode(first), (b, id) => b.Did(first, id));
        Bikes = [bike];
        return this;
    }

    /// <summary>Looks, and keeps what came of it.</summary>
    public Card? Look(DateTimeOffset now)
    {
        Last = Nudger.Decide(Rider, Bikes, Knowledge, ClubZone, now);
        Assert.Equal(Rider.Version + 1, Last.After.Version);
        Rider = Last.After;
        return Last.Say?.Card;
    }

    public Card? Look(LocalDate day, int hour, int minute = 0) => Look(At(day, hour, minute));

    public Taken Answer(NudgeAnswer answer, DateTimeOffset now, LocalDate? until = null)
    {
        var taken = Taking.Take(Rider, Bikes, answer, Knowledge, ClubZone, now, until);
        Assert.Equal(Rider.Version + 1, taken.Rider.Version);
        Rider = taken.Rider;
        Bikes = [.. Bikes.Select(b => taken.Bikes.FirstOrDefault(n => n.Id == b.Id) ?? b)];
        return taken;
    }

    /// <summary>Presses the first option of a card that begins with a label.</summary>
    public Taken Press(Card card, string label, DateTimeOffset now) =>
        Answer(NudgeAnswer.Read(card.Options.First(o => o.Label.StartsWith(label, StringComparison.Ordinal)).Id)!, now);

    /// <summary>Every quarter of an hour from one moment to another; the cards that were sent, with their moments.</summary>
    public List<(DateTimeOffset At, Card Card)> Watch(DateTimeOffset from, DateTimeOffset to)
    {
        var sent = new List<(DateTimeOffset, Card)>();
        for (var at = from; at <= to; at += TimeSpan.FromMinutes(15))
        {
            if (Look(at) is { } card) sent.Add((at, card));
        }

        return sent;
    }
}
