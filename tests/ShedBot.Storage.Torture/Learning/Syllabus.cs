using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Storage.Torture.Learning;

/// <summary>
/// Invented clubs of an invented pump, each with the same closed cases, that learn by themselves: first from all of them, and once one member has left, from the
/// others' alone. So each comes to two editions, and what stands in these is known beforehand.
/// </summary>
internal static class Syllabus
{
    public static readonly DateTimeOffset Now = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    private const int Kinked = 48, Shut = 24, Members = 12;

    /// <summary>Long enough ago to count.</summary>
    private static readonly DateTimeOffset Then = Now.AddDays(-30);

    private static readonly ConcurrentDictionary<int, (string First, string Second)> Known = new();

    private static readonly Lazy<RuleBase> Pump = new(() => RuleBase.Of(KnowledgeFolder.Read(Path.Combine(AppContext.BaseDirectory, "pump"))));

    public static RuleBase Rules => Pump.Value;

    /// <summary>By itself, and as far as it may go: else the limit would hide what the member who leaves had part in.</summary>
    public static ChooseTeaching Choice { get; } = new(Learning: LearningMode.Automatic, MostFactor: 10);

    public static ClubId Club(int number) => new(FormattableString.Invariant($"club-{number:0000}"));

    /// <summary>Whose cases are counted out in the end.</summary>
    public static MemberId Leaver(int club) => Member(club, 0);

    public static Teacher Keeper(int club) => new(Club(club), Club(club).Member("keeper"), "Heron", TeachingRights.All);

    public static TeachDesk Desk(LiteShedStore store) => new(store, () => Rules, new ClubTrials(() => new CoachOptions(), new RidersTried(2, Stops: 0)));

    public static IEnumerable<TurnSaved> Cases(int club) => Enumerable.Range(0, Kinked + Shut).Select(n => n < Kinked
        ? Case(club, n, "feel-hose", "kinked", "straighten-hose")
        : Case(club, n, "ask-tap", "shut", "open-tap"));

    /// <summary>What must stand in the first edition, and in the second one.</summary>
    public static (string First, string Second) Expected(int club) => Known.GetOrAdd(club, Counted);

    private static (string First, string Second) Counted(int club)
    {
        var limits = LearningLimits.Of(TeachingSettings.New(Club(club)) with { MostFactor = Choice.MostFactor!.Value });
        ImmutableArray<ClosedCase> all = [.. Cases(club).Select(c => new ClosedCase(c.Case, BikeProfile.New(c.Case.Bike, c.Case.Member), c.Outcome!))];
        var first = Learner.Learn(Rules.Knowledge!, all, limits, Now).Learnt;
        return (LearntText.Write(first), LearntText.Write(Learner.CountAnew(Rules.Knowledge!, first, all.Where(c => c.Case.Member != Leaver(club)), limits, Now).Learnt));
    }

    private static MemberId Member(int club, int number) => Club(club).Member(FormattableString.Invariant($"m{number}"));

    private static TurnSaved Case(int club, int number, string check, string seen, string repair)
    {
        // The one who leaves has kinked hoses only, so that without them less is learnt.
        var (id, member) = (new CaseId(FormattableString.Invariant($"{Club(club)}-{number:0000}")), Member(club, number < Kinked ? number % Members : 1 + (number % (Members - 1))));
        CaseEntry Line(EntryKind kind, string subject, string? value = null) => new(1, kind, subject, value, 1, Then);
        var closed = Coaching.Cases.Case.New(id, member, BikeId.Of(member), FormattableString.Invariant($"{Club(club)}/{number}"), Then) with
        {
            Phase = CasePhase.Solved,
            Entries = [Line(EntryKind.Complaint, "no-water"), Line(EntryKind.Answer, check, seen), Line(EntryKind.RepairHeld, repair)],
            ClosedAt = Then,
            Turn = 1,
            Version = 1,
        };
        return new TurnSaved(closed, null, new Outcome(id, CasePhase.Solved, repair, [], 1, "torture", Then), []);
    }
}
