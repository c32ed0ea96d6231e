using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Discord.Torture;

/// <summary>
/// Invented members, each with a bike on which one task falls due on every day, and who are reminded. They have it done on the evening of the reminder, so
/// there is exactly one reminder for each evening.
/// </summary>
internal static class Club
{
    public const int Members = 4;

    /// <summary>The id of the one task.</summary>
    private const string Task = "grease";

    /// <summary>The project's rules, with no other task than the one; it presses, so that it is told on its day.</summary>
    public static Coach Coach()
    {
        var rules = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(AppContext.BaseDirectory, "knowledge"))).Knowledge
            ?? throw new InvalidOperationException("The rules beside the program cannot be read.");
        var task = new ServiceRule(
            Task, "grease", "grease it", "It wears.", 5, "high", [], [], [new RepairStep("Grease it.", null)], [new Interval(1, Measure.Days)], [], [], [], [], [], false,
            new Origin("common practice", "the torture", new DateOnly(2026, 5, 1), "none.yaml", 1));
        var knowledge = rules with { Service = ImmutableSortedDictionary.Create<string, ServiceRule>(StringComparer.Ordinal).Add(Task, task) };
        return new Coach(knowledge, Listener.For(knowledge), new CoachOptions());
    }

    public static MemberId Member(string guild, string person) => new ClubId(guild).Member(person);

    public static Rider Rider(MemberId member) => Coaching.Nudging.Rider.New(member) with { Consent = Consent.Given, NextLook = DayClock.Evening(0), Version = 1 };

    /// <summary>Greased the day before the first.</summary>
    public static BikeProfile Bike(MemberId member)
    {
        var before = DayClock.Evening(-1);
        return BikeProfile.New(BikeId.Of(member), member) with
        {
            Done = [new ServiceDone(Task, RiderDays.Of(before, DateTimeZone.Utc), before, "told", null)],
            Version = 1,
        };
    }

    /// <summary>The days on which the bike was greased, with how often.</summary>
    public static IEnumerable<(LocalDate Day, int Times)> Greased(BikeProfile bike) => bike.Done.Where(d => d.Task == Task).GroupBy(d => d.Day, (day, all) => (day, all.Count()));
}
