using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Puts together whoever deals with what happens in clubs.</summary>
internal sealed class Handlers
{
    /// <param name="keepAfterLeaving">How long a club's data is kept once it has sent us away.</param>
    /// <param name="restored">The data file may be older than the chat.</param>
    /// <param name="trialTold">How often it is told how far a trial of rules is.</param>
    /// <param name="aside">Does work in a lane of its own.</param>
    public Handlers(Parts parts, TimeSpan keepAfterLeaving, bool restored, TimeSpan trialTold, Action<Snowflake, Func<Task>> aside)
    {
        (Rooms, Arrivals, Registering) = (new Rooms(parts.Clubs), new Arrivals(parts), new Registering(parts));
        var (panels, eyes, direct, rights) = (new Panels(parts), new CaseEyes(parts), new DirectChannels(parts), new RightsCheck(parts));

        // Cases.
        var delivery = new Delivery(parts, Rooms, new RoomThreads(parts, Rooms), panels);
        var turns = new Turns(parts, delivery, rights);
        var starting = new Starting(parts, Rooms, turns);
        var offers = new Offers(parts, starting);
        var pressing = new Pressing(parts, Rooms, turns, panels, eyes);
        Saying = new Saying(parts, Rooms, turns, starting);

        // Bikes, and what falls due on them.
        var logbooks = new Logbooks(parts);
        var sheets = new BikeSheets(parts, logbooks);
        var reminders = new Reminders(parts);
        var reminderDelivery = new ReminderDelivery(parts, direct, panels);
        var reminding = new Reminding(parts, reminderDelivery, restored ? new Recalling(parts, direct, panels) : null);
        var reminderPresses = new ReminderPresses(parts, direct, new ShownTrouble(parts, starting), logbooks);
        var commanding = new Commanding(parts, Rooms, starting, turns, delivery, eyes, logbooks, sheets, reminders);

        // The clubs' own rules.
        var (learning, show, words) = (new LearningKeeper(parts), new TeachingShow(parts), new WordDelivery(parts, direct, panels));
        var teaching = new Teaching(parts, new TeachingTrials(parts, show, Arrivals, aside, trialTold), show, words, learning, aside);

        // The clubs themselves.
        var setUp = new SetUp(parts, rights);
        CatchingUp = new CatchingUp(parts, Rooms, Saying, setUp);
        There = new ClubsThere(parts, setUp, rights, CatchingUp, keepAfterLeaving);
        Upkeep = new Upkeep(parts, Rooms, delivery, reminderDelivery, words, keepAfterLeaving);

        var presses = new PressRouting(new Leaving(parts, learning), reminderPresses, logbooks, sheets, offers, commanding, pressing);
        Routing = new Routing(presses, commanding, logbooks, offers, reminders, setUp, teaching, new TeachingOffers(parts), new Beside(parts, words));
        Rounds = [reminding.RoundAsync, words.RoundAsync, learning.RoundAsync];
    }

    public Rooms Rooms { get; }

    public Arrivals Arrivals { get; }

    public Registering Registering { get; }

    public Saying Saying { get; }

    public CatchingUp CatchingUp { get; }

    public ClubsThere There { get; }

    public Upkeep Upkeep { get; }

    public Routing Routing { get; }

    /// <summary>What comes round again and again, each by itself, besides <see cref="Upkeep"/>.</summary>
    public IReadOnlyList<Func<CancellationToken, Task>> Rounds { get; }
}
