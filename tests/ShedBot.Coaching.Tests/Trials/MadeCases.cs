using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>Closed cases of invented riders, asked what chance would have asked: quickly made, and with everything in them that a case can hold.</summary>
internal static class MadeCases
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    public static ImmutableArray<ClosedCase> Of(KnowledgeBase knowledge, int count, int seed = 1)
    {
        var made = new ClosedCase[count];
        var draw = new RiderDraw(knowledge, new RidersWanted());
        Parallel.For(0, count, number => made[number] = One(knowledge, draw.Draw(seed, number)));
        return [.. made];
    }

    private static ClosedCase One(KnowledgeBase knowledge, Rider rider)
    {
        var (luck, turn, answers) = (rider.Luck, 0, new RiderAnswers(rider, new Habits()));
        var entries = ImmutableArray.CreateBuilder<CaseEntry>();
        void Add(EntryKind kind, string subject, string? value = null, double score = 1) => entries.Add(new CaseEntry(turn, kind, subject, value, score, Noon.AddMinutes(turn)));

        turn++;
        var complaint = rider.Complaints[luck.PickOf(rider.Complaints.Length, "told")];
        Add(EntryKind.Complaint, complaint, score: luck.Happens(0.5, "picked") ? 1 : 0.6 + (0.1 * luck.PickOf(4, "score")));
        if (luck.Happens(0.1, "denied") && knowledge.Complaints.Keys.FirstOrDefault(c => !rider.Complaints.Contains(c)) is { } not) Add(EntryKind.Denied, not);
        foreach (var fact in knowledge.Facts.Values.Where(f => luck.Happens(0.2, f.Id)))
        {
            turn++;
            Add(EntryKind.Fact, fact.Id, rider.Facts[fact.Id]);
        }

        foreach (var check in knowledge.Model.Checks.OrderBy(c => luck.Roll(c.Id + ":order")).Take(5))
        {
            turn++;
            var said = answers.Check(check, rider.Machine, 0);
            if (said is not null && luck.Happens(0.1, check.Id + ":heard")) Add(EntryKind.Volunteered, check.Finding, said, 0.8);
            else Add(said is null ? EntryKind.NotSure : EntryKind.Answer, check.Id, said);
        }

        turn++;
        var repairs = knowledge.Repairs.Values.OrderByDescending(r => rider.Machine.Faults.Any(r.Mends.ContainsKey)).ThenBy(r => luck.Roll(r.Id)).ToList();
        if (luck.Happens(0.2, "fails first"))
        {
            Add(EntryKind.RepairShown, repairs[^1].Id);
            turn++;
            Add(luck.Happens(0.2, "eased") ? EntryKind.RepairBetter : EntryKind.RepairFailed, repairs[^1].Id);
        }

        Add(EntryKind.RepairShown, repairs[0].Id);
        var held = rider.Machine.Faults.Any(repairs[0].Mends.ContainsKey) && luck.Happens(0.8, "held");
        if (held) Add(EntryKind.RepairHeld, repairs[0].Id);
        var id = new CaseId($"made-{rider.Number:00000}");
        var bike = BikeProfile.New(new BikeId($"bike-{rider.Number}"), new MemberId("made"));
        if (luck.Happens(0.3, "profile") && knowledge.Facts.Values.FirstOrDefault() is { } known)
            bike = bike with { Facts = bike.Facts.SetItem(known.Id, new BikeFact(rider.Facts[known.Id], luck.Happens(0.5, "long ago") ? Noon.AddDays(-30) : Noon.AddMinutes(luck.PickOf(8, "when")), "told")) };
        var phase = held ? CasePhase.Solved : CasePhase.HandedOver;
        var @case = Case.New(id, bike.Owner, bike.Id, "made", Noon) with { Entries = entries.ToImmutable(), Phase = phase, Turn = turn, ClosedAt = Noon.AddMinutes(turn) };
        ImmutableArray<OutcomeCause> causes = held ? [.. repairs[0].Mends.Keys.Order(StringComparer.Ordinal).Select(f => new OutcomeCause(f, 0.5))] : [];
        return new ClosedCase(@case, bike, new Outcome(id, phase, held ? repairs[0].Id : null, causes, 5, knowledge.Version, Noon.AddMinutes(turn)));
    }
}
