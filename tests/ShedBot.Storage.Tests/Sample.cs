using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;

namespace ShedBot.Storage.Tests;

/// <summary>Turns of invented members of an invented club.</summary>
public static class Sample
{
    public static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    public static readonly LocalDate Today = new(2026, 5, 2);

    public static readonly MemberId Wren = new("wren");

    public static Case Opened(string id = "case-1", string member = "wren", string place = "shed-corner", string? bike = null) =>
        Case.New(new CaseId(id), new MemberId(member), new BikeId(bike ?? member + "-bike"), place, Noon);

    /// <summary>The case one turn on.</summary>
    public static Case Next(this Case c, string answer = "yes", CasePhase phase = CasePhase.Asking)
    {
        var at = c.LastTurnAt.AddSeconds(20);
        return c with
        {
            Phase = phase,
            OpeningWords = "clutch wont let go",
            Entries = c.Entries.Add(new CaseEntry(c.Turn + 1, EntryKind.Answer, "arm-free-play", answer, 1, at)),
            Open = new Ask(AskKind.Check, "arm-free-play"),
            Turn = c.Turn + 1,
            Version = c.Version + 1,
            KnowledgeVersion = "2026.5",
            LastTurnAt = at,
            ClosedAt = phase is CasePhase.Solved or CasePhase.Left ? at : null,
            Handled = c.Handled.Add($"event-{c.Turn + 1}-{answer}"),
        };
    }

    public static BikeProfile Next(this BikeProfile b, string fact = "arm", string value = "stock") => b with
    {
        Facts = b.Facts.SetItem(fact, new BikeFact(value, Noon, "told")),
        Version = b.Version + 1,
    };

    /// <summary>The bike one entry on, with something in every part of its log.</summary>
    public static BikeProfile Ridden(this BikeProfile b, double km = 10) => b with
    {
        Riding = b.Riding.StatePace(new StatedPace(4, 10, null, Today), Noon).Must
            .Break(Today.PlusDays(7), Today.PlusDays(14), Today, Noon).Must
            .Log(new RiddenDay(Today, km, 0.5, Weather.Wet), Today, null, Noon).Must,
        Done = b.Done.Add(new ServiceDone("grease-bar", Today, Noon, "told", null)),
        Version = b.Version + 1,
    };

    public static BikeProfile BikeOf(this Case c) => BikeProfile.New(c.Bike, c.Member);

    public static TurnSaved Saying(this Case c, params string[] words) => new(
        c, null, null, [.. words.Select((w, i) => new OutboxMessage($"{c.Id}-{c.Turn}-{i}", c.Id, c.Place, CardOf(w), c.LastTurnAt))]);

    public static Card CardOf(string words) =>
        new("Clutch", [new TextBlock(words)], [new CardOption("arm-free-play:yes", "Yes"), new CardOption("why", "Why?", OptionRole.Help)]);

    public static Outcome OutcomeOf(this Case c) =>
        new(c.Id, c.Phase, "set-the-arm", [new OutcomeCause("arm-off-neutral", 0.93)], 4, c.KnowledgeVersion, c.LastTurnAt);

    public static Club ClubOf(string id, int version = 1) =>
        Club.New(new ClubId(id)) with { HelpChannel = "channel-1", HelperRole = "role-1", TimeZone = "Europe/Lisbon", LastHeard = "m-1", Version = version };

    /// <param name="minute">When it was opened, in minutes from noon.</param>
    public static Room RoomOf(string club, string person, string place, int minute = 0) => new(
        place, new ClubId(club), new ClubId(club).Member(person), "channel-1", null, true, "m-1", false, "Clutch", null, [], false, null,
        RoomState.Open, Noon.AddMinutes(minute), 1);

    /// <summary>A rider with something in every part.</summary>
    /// <param name="minute">When to look next, in minutes from noon; null: never.</param>
    public static Rider RiderOf(string member, int? minute) => Rider.New(new MemberId(member)) with
    {
        Consent = Consent.Given,
        Zone = "Europe/Lisbon",
        Stopped = ["spokes"],
        Later = [new Postponed("b|grease|start", Noon.AddDays(1), true)],
        Told = [new Told("b|grease|start", Today)],
        LastAt = Noon,
        LastDay = Today,
        NextLook = minute is { } m ? Noon.AddMinutes(m) : null,
        Version = 1,
    };

    public static string[] Words(this IEnumerable<OutboxMessage> messages) =>
        [.. messages.Select(m => ((TextBlock)m.Card.Blocks[0]).Text)];
}
