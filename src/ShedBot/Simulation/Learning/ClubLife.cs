using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Knowledge;

namespace ShedBot.Simulation.Learning;

/// <summary>What goes wrong in the books of a simulated club.</summary>
/// <param name="Members">How many honest members bring the cases, in turn.</param>
/// <param name="WrongOutcomes">The share of cases whose end is written down wrongly: a repair that did nothing said to have held, or another one credited.</param>
/// <param name="Hostile">The share of all cases that one member makes up, all blaming the same innocent cause.</param>
internal sealed record ClubHabits(int Members, double WrongOutcomes, double Hostile);

/// <summary>The closed cases of a simulated club, coached by one set of rules on bikes that follow another.</summary>
internal sealed class ClubLife(IRideCoach coach, KnowledgeBase truth, ClubHabits habits, int seed)
{
    private readonly RiderDraw draw = new(truth, new RidersWanted());

    /// <param name="number">Of the case, from 0; the same always gives the same.</param>
    public ClosedCase? Case(int number)
    {
        var luck = new Luck(seed, number);
        if (luck.Happens(habits.Hostile, "hostile")) return MadeUp(number);
        var recorder = new RecordingCoach(coach);
        CoachedRide.Across(recorder, truth, draw.Draw(seed, number), new Habits());
        if (recorder.Closed is not { } closed) return null;
        var named = Named(closed, number, $"member-{luck.PickOf(habits.Members, "member")}");
        return luck.Happens(habits.WrongOutcomes, "wrong outcome") ? Wronged(named, luck) : named;
    }

    /// <summary>The cause that the hostile member blames: of those with a complaint that is often told and a coached repair, one that is rare.</summary>
    public string Blamed => coach.Knowledge.Faults.Values.Where(f => f.HowCommon == "rare" && RepairOf(f.Id) is not null && ComplaintOf(f.Id) is not null)
        .Select(f => f.Id).First();

    private static ClosedCase Named(ClosedCase closed, int number, string member)
    {
        var (id, who) = (new CaseId($"case-{number:000000}"), new MemberId(member));
        return closed with { Case = closed.Case with { Id = id, Member = who }, Outcome = closed.Outcome with { Case = id } };
    }

    private ClosedCase Wronged(ClosedCase closed, Luck luck)
    {
        var entries = closed.Case.Entries;
        var failed = entries.LastOrDefault(e => !e.Struck && e.Kind is EntryKind.RepairFailed or EntryKind.RepairBetter);
        if (closed.Outcome.Phase == CasePhase.Solved)
        {
            // Another repair that is for the same kind of trouble is written down.
            var held = entries.Last(e => e.Kind == EntryKind.RepairHeld);
            var others = coach.Knowledge.Repairs.Keys.Where(r => r != held.Subject).ToList();
            var other = others[luck.PickOf(others.Count, "credited")];
            return closed with { Case = closed.Case with { Entries = entries.Replace(held, held with { Subject = other }) }, Outcome = closed.Outcome with { Repair = other } };
        }

        if (failed is null) return closed;
        var at = entries.LastIndexOf(failed);
        return closed with
        {
            Case = closed.Case with { Phase = CasePhase.Solved, Entries = entries.RemoveRange(at, entries.Length - at).Add(failed with { Kind = EntryKind.RepairHeld }) },
            Outcome = closed.Outcome with { Phase = CasePhase.Solved, Repair = failed.Subject },
        };
    }

    private ClosedCase MadeUp(int number)
    {
        var (rules, fault) = (coach.Knowledge, Blamed);
        var (at, id, who) = (new DateTimeOffset(2026, 5, 2, 12, 0, 0, TimeSpan.Zero), new CaseId($"case-{number:000000}"), new MemberId("hostile"));
        var repair = RepairOf(fault)!;
        var lines = ImmutableArray.CreateBuilder<CaseEntry>();
        void Write(EntryKind kind, string subject, string? value = null) => lines.Add(new CaseEntry(lines.Count + 1, kind, subject, value, 1, at));
        Write(EntryKind.Complaint, ComplaintOf(fault)!);
        foreach (var (finding, states) in rules.Faults[fault].ShowsAs.OrderBy(s => s.Key, StringComparer.Ordinal))
        {
            var check = rules.Checks.Values.FirstOrDefault(c => c.Tells == finding);
            var state = rules.Findings.GetValueOrDefault(finding)?.States.FirstOrDefault(s => states.ContainsKey(s.Id) && s.StopRiding is null);
            if (check is not null && state is not null) Write(EntryKind.Answer, check.Id, state.Id);
        }

        Write(EntryKind.RepairHeld, repair);
        var made = ShedBot.Coaching.Cases.Case.New(id, who, BikeId.Of(who), "simulated", at) with { Phase = CasePhase.Solved, Entries = lines.ToImmutable(), ClosedAt = at };
        return new ClosedCase(made, null, new(id, CasePhase.Solved, repair, [], 0, rules.Version, at));
    }

    private string? RepairOf(string fault) => coach.Knowledge.Repairs.Values.FirstOrDefault(r => r.Mends.ContainsKey(fault))?.Id;

    private string? ComplaintOf(string fault) => coach.Knowledge.Faults[fault].ShowsAs.Keys.Where(coach.Knowledge.Complaints.ContainsKey).Order(StringComparer.Ordinal).FirstOrDefault();
}
