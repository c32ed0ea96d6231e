using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Storage.Torture.Reminders;

/// <summary>
/// Invented members with one task that falls due on every day, who have it done an hour after each reminder: so there is exactly one reminder for each of
/// their days, the first on <see cref="First"/>, and no gap.
/// </summary>
internal static class Routine
{
    public const int Members = 6;

    public const string Zone = "Etc/UTC";

    public static readonly LocalDate First = new(2026, 5, 3);

    /// <summary>Nothing but the one task: reminders look at nothing else.</summary>
    public static readonly KnowledgeBase Knowledge = new(
        "torture", null!, Empty<ComplaintRule>(), Empty<FindingRule>(), Empty<FactRule>(), Empty<FaultRule>(), Empty<CheckRule>(), Empty<CoverRule>(), Empty<RepairRule>(),
        Empty<HowToRule>(), Empty<EmergencyRule>(), [], null!, [], Empty<ServiceRule>().Add("grease", new ServiceRule(
            "grease", "grease", "grease it", "It wears.", 5, "high", [], [], [new RepairStep("Grease it.", null)], [new Interval(1, Measure.Days)], [], [], [], [], [], false,
            new Origin("common practice", "the torture", new DateOnly(2026, 5, 1), "none.yaml", 1))));

    public static MemberId Member(int member) => new($"club/rider-{member}");

    public static Rider Fresh(int member) => Rider.New(Member(member)) with { Consent = Consent.Given, NextLook = At(First), Version = 1 };

    public static BikeProfile Bike(int member) => BikeProfile.New(new BikeId($"{Member(member)}/bike"), Member(member)) with
    {
        Done = [new ServiceDone("grease", First.PlusDays(-1), At(First.PlusDays(-1)), "told", null)],
        Version = 1,
    };

    /// <summary>The name of the message of a day, 0 for the first.</summary>
    public static string Message(int member, int day) => $"{Decision.PlaceOf(Member(member))}/{Dates.Iso(First.PlusDays(day))}";

    private static DateTimeOffset At(LocalDate day) => day.AtMidnight().PlusHours(18).InUtc().ToDateTimeOffset();

    private static ImmutableSortedDictionary<string, T> Empty<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
