using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Tests.Logbook;

/// <summary>An invented rider with one bike, under the shipped rules, on Friday 1 May 2026 at six in the evening.</summary>
internal static class Bench
{
    private static readonly Lazy<Listener> Quiet = new(() => Listener.For(Rules!.Value));

    private static readonly Lazy<KnowledgeBase> Rules = new(() =>
        KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Repository.Root, "knowledge"))).Knowledge ?? throw new InvalidOperationException("The shipped rules cannot be read."));

    public static readonly DateTimeOffset Now = new(2026, 5, 1, 18, 0, 0, TimeSpan.Zero);

    public static readonly LocalDate Today = new(2026, 5, 1);

    private static readonly Ways Ways = new("rode", "pace", "undo", "plan", "plan all", "kit fitted", "done {0}", "how {0}", "tell me");

    public static KnowledgeBase Knowledge => Rules.Value;

    public static ICoaches Coaches { get; } = Serving(() => Knowledge);

    /// <summary>A coach for desks that only look at the rules.</summary>
    public static ICoaches Serving(Func<KnowledgeBase> rules) => new OneCoach(() => new Coach(rules(), Quiet.Value, new CoachOptions()));

    public static Speaker Speaker { get; } = new(new MemberId("m"), Units.Metric, "Etc/UTC", Ways);

    public static BikeProfile Bike { get; } = BikeProfile.New(BikeId.Of(Speaker.Member), Speaker.Member);

    public static Result<BikeRequest>? Read(string line, bool loose = true) => BikeWords.Read(line, Knowledge, Speaker, Now, loose);

    public static BikeProfile With(this BikeProfile bike, BikeEntry entry, int minutes = 0) =>
        Entering.Make(bike, entry, Knowledge, Speaker, Now.AddMinutes(minutes)).Must.Bike;
}
