using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>The same rider without a coach, working down a list of steps: what the coach is measured against.</summary>
public sealed class UncoachedRide
{
    /// <summary>How often a complaint that was told is not the one that is meant.</summary>
    private const double Doubt = 0.02;

    private readonly KnowledgeBase knowledge;
    private readonly Rider rider;
    private readonly RiderAnswers answers;
    private readonly Bill bill;

    private UncoachedRide(KnowledgeBase knowledge, Rider rider, Habits habits)
    {
        (this.knowledge, this.rider) = (knowledge, rider);
        answers = new RiderAnswers(rider, habits);
        bill = new Bill(knowledge.Model, new CostWeights());
    }

    /// <summary>No question: repairs in falling order of chance over cost, worked out once from the complaint, then help where help is cheaper.</summary>
    /// <param name="believed">What is believed after the complaint; null to work it out from what the rider's bike truly shows.</param>
    public static Ride InFixedOrder(KnowledgeBase knowledge, Rider rider, Habits habits, Hazard limit, Belief? believed) =>
        new UncoachedRide(knowledge, rider, habits).Follow(Order(believed ?? Told(knowledge, rider), limit));

    /// <summary>Every check and repair in an order drawn at random, then help.</summary>
    public static Ride InRandomOrder(KnowledgeBase knowledge, Rider rider, Habits habits, Hazard limit)
    {
        var checks = knowledge.Model.Checks.Where(c => c.Hazard <= limit).Select(c => (c.Id, Step: (NextStep)new DoCheck(c.Id)));
        var repairs = knowledge.Model.Repairs.Where(r => r.Hazard <= limit).Select(r => (r.Id, Step: (NextStep)new DoRepair(r.Id)));
        var steps = checks.Concat(repairs).OrderBy(s => rider.Luck.Roll($"{s.Step.GetType().Name}:{s.Id}:order")).Select(s => s.Step);
        return new UncoachedRide(knowledge, rider, habits).Follow(steps);
    }

    public static IEnumerable<NextStep> Order(Belief believed, Hazard limit)
    {
        var request = new PlanRequest(believed) { HazardLimit = limit, ChecksClosed = [.. believed.Model.Checks.Select(c => c.Id)] };
        return Planner.Decide(request).RepairOrder.Select(r => new DoRepair(r));
    }

    private static Belief Told(KnowledgeBase knowledge, Rider rider) => Inferrer.Infer(
        knowledge.Model, [.. rider.Complaints.Select(c => new FindingTold(c, Finding.Yes, AnswerError.Even(Doubt)))]);

    private Ride Follow(IEnumerable<NextStep> steps)
    {
        var machine = rider.Machine;
        foreach (var step in steps)
        {
            if (step is DoCheck(var id) && Stops(id, machine) is { } stopped) return End(stopped);
            if (step is not DoRepair(var name)) continue;
            var repair = knowledge.Model.Repairs[knowledge.Model.RepairAt(name)];
            var before = machine;
            bill.Repair(repair);
            machine = machine.After(repair, 0);
            if (answers.Try(before, machine, bill.Repairs - 1) == TriedOut.Held)
                return End(answers.IsOver(machine) ? Ending.Mended : Ending.TakenForMended);
        }

        return End(Ending.HandedOver);
    }

    private Ending? Stops(string id, Machine machine)
    {
        var check = knowledge.Model.Checks[knowledge.Model.CheckAt(id)];
        bill.Check(check);
        var states = knowledge.Findings[check.Finding].States;
        if (answers.Check(check, machine, 0) is not { } said || !states.Any(s => s.Id == said && s.StopRiding is not null)) return null;
        return states[machine.StateOf(check.Finding)].StopRiding is not null ? Ending.StoppedRightly : Ending.StoppedWrongly;
    }

    private Ride End(Ending ending)
    {
        if (ending != Ending.Mended) bill.Help();
        return new Ride(rider, ending, false, false, null, bill.Asked, bill.Repairs, bill.Minutes, bill.Cost);
    }
}
