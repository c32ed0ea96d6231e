using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Calibration;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>A rider who is coached: words and options go through the coach exactly as a member's do.</summary>
public sealed class CoachedRide
{
    /// <summary>A talk that is longer than this has gone wrong, and ends with a human.</summary>
    private const int MostTurns = 80;

    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    private readonly IRideCoach coach;
    private readonly RideWorld world;
    private readonly Rider rider;
    private readonly Action<string>? tell;
    private readonly RiderAnswers answers;
    private readonly Bill bill;
    private readonly Dictionary<string, int> times = new(StringComparer.Ordinal);
    private Machine machine;
    private Case @case;
    private BikeProfile bike;
    private ImmutableHashSet<string> offered = [];
    private ImmutableSortedSet<string> mended = [];
    private string? lead;
    private Belief? atComplaint;
    private Believed? afterComplaint, beforeRepair;
    private bool stopIsThere;

    private CoachedRide(IRideCoach coach, KnowledgeBase truth, Rider rider, Habits habits, Action<string>? tell)
    {
        (this.coach, this.rider, this.tell, machine) = (coach, rider, tell, rider.Machine);
        world = new RideWorld(truth, coach.Knowledge);
        answers = new RiderAnswers(rider, habits);
        bill = new Bill(truth.Model, new CostWeights(), coach.Knowledge.Model);
        bike = BikeProfile.New(new BikeId("bike"), new MemberId("rider"));
        @case = Case.New(new CaseId("case"), bike.Owner, bike.Id, "simulated", Noon);
        // The list of complaints is open from the start, with the rider's own ones first on it.
        if (habits.PicksComplaint) @case = @case with { Open = new Ask(AskKind.WhichComplaint, string.Join(',', rider.Complaints), 0, 1) };
    }

    /// <param name="tell">Told each turn in one line; null for none.</param>
    /// <returns>The ride, and what was believed right after the complaint; null when no complaint was ever made out.</returns>
    public static (Ride Ride, Belief? AfterComplaint) Of(Coach coach, Rider rider, Habits habits, Action<string>? tell = null)
    {
        var talk = new CoachedRide(new PlainCoach(coach), coach.Knowledge, rider, habits, tell);
        var ride = talk.Run();
        return (ride, talk.atComplaint);
    }

    /// <summary>A rider whose bike follows other rules than those of the coach.</summary>
    /// <param name="truth">The rules that the rider was drawn from.</param>
    public static Ride Across(IRideCoach coach, KnowledgeBase truth, Rider rider, Habits habits) => new CoachedRide(coach, truth, rider, habits, null).Run();

    private Ride Run()
    {
        Outcomes? outcome = null;
        for (var turn = 0; turn < MostTurns && !@case.IsClosed; turn++)
        {
            var said = Next($"e{turn}");
            var taken = coach.Take(@case, bike, said, Noon);
            (@case, bike) = (taken.Case, taken.Bike);
            tell?.Invoke(TalkLine.Of(said, taken));
            offered = taken.Say.SelectMany(c => c.Options).Select(o => o.Id).ToImmutableHashSet();
            if (taken.Outcome is { } closed) outcome = new Outcomes(closed.Phase, [.. closed.Causes.Select(c => c.Fault)]);
            Look();
        }

        var ending = End(outcome?.Phase);
        if (ending != Ending.Mended) bill.Help();
        var good = ending == Ending.Mended;
        return new Ride(
            rider, ending, good && lead is not null && mended.Contains(lead), good && outcome is { Named: [var named, ..] } && mended.Contains(named),
            lead, bill.Asked, bill.Repairs, bill.Minutes, bill.Cost)
        { AfterComplaint = afterComplaint, BeforeRepair = beforeRepair };
    }

    private Ending End(CasePhase? phase) => phase switch
    {
        CasePhase.Solved => answers.IsOver(machine) ? Ending.Mended : Ending.TakenForMended,
        CasePhase.Stopped => stopIsThere ? Ending.StoppedRightly : Ending.StoppedWrongly,
        _ => Ending.HandedOver,
    };

    /// <summary>Notes what is believed, at the points at which it is scored.</summary>
    private void Look()
    {
        if (atComplaint is null && @case.Standing.Any(e => e.Kind == EntryKind.Complaint))
        {
            atComplaint = coach.Believe(@case, bike, Noon);
            afterComplaint = Score(atComplaint);
        }

        if (@case.Open.Kind != AskKind.Repair && @case.Phase is not (CasePhase.HandedOver or CasePhase.Stopped)) return;
        var belief = coach.Believe(@case, bike, Noon);
        lead = Lead(belief);
        if (@case.Open.Kind == AskKind.Repair && bill.Repairs == 0) beforeRepair = Score(belief);
    }

    /// <summary>A cause that is there and that the coach's rules do not list was given no chance by them.</summary>
    private Believed Score(Belief belief)
    {
        var known = belief.Model.Faults.Select((f, i) => new Forecast(Math.Clamp(belief.Marginal(i), 0, 1), machine.Faults.Contains(f.Id))).ToImmutableArray();
        var unlisted = world.IsOne ? [] : machine.Faults.Where(f => belief.Model.Faults.All(k => k.Id != f)).Select(_ => new Forecast(0, true));
        return new Believed([.. known, .. unlisted], known[belief.Model.FaultAt(Lead(belief))]);
    }

    private static string Lead(Belief belief) => belief.Model.Faults.MaxBy(f => belief.Marginal(f.Id))!.Id;

    private Incoming Next(string id)
    {
        var open = @case.Open;
        return open.Kind switch
        {
            AskKind.WhichComplaint => Choose(id, Closest()),
            AskKind.Either => Choose(id, Meant(open.Subject)),
            AskKind.Fact => Choose(id, Fact(open.Subject)),
            AskKind.Check => Choose(id, Check(open.Subject)),
            AskKind.Ready => Choose(id, OptionId.Ready),
            AskKind.Repair => Choose(id, OptionId.Done),
            AskKind.DidItHold => Choose(id, Prove(open.Subject)),
            AskKind.AllSafe => Choose(id, OptionId.Safe),
            _ => new MemberSaid(id, Words()),
        };
    }

    private MemberChose Choose(string id, string token) => new(id, OptionId.For(@case.Open, token));

    /// <summary>The complaint in the words of one of the rules' examples; a second trouble is told as well.</summary>
    private string Words()
    {
        var time = Again("words");
        return string.Join(". Also, ", rider.Complaints.OrderBy(c => rider.Luck.Roll(c, time)).Take(2).Select(c =>
        {
            var phrases = world.Truth.Complaints[c].RidersSay;
            return phrases[rider.Luck.PickOf(phrases.Length, $"{c}:words", time)];
        }));
    }

    private string Closest()
    {
        var closest = rider.Complaints.OrderBy(c => rider.Luck.Roll(c)).Where(coach.Knowledge.Complaints.ContainsKey)
            .FirstOrDefault(c => @case.Turn == 0 || offered.Contains(OptionId.For(@case.Open, OptionId.Complaint(c))));
        return closest is null ? OptionId.NoneOfThese : OptionId.Complaint(closest);
    }

    /// <summary>No simulated rider comes with a danger, so it is the one that is a trouble.</summary>
    private string Meant(string either) =>
        OptionId.Either(coach.Knowledge.Eithers.First(e => e.Id == either).Answers.ToList().FindIndex(a => coach.Knowledge.Complaints.ContainsKey(a.Means)));

    private string Fact(string fact)
    {
        bill.Fact();
        var rule = coach.Knowledge.Facts[fact];
        return world.Knows(rule, rider) && answers.Fact(rule, Again(fact)) is { } value ? OptionId.State(value) : OptionId.NotSure;
    }

    private string Check(string id)
    {
        var check = world.Check(id);
        bill.Check(check);
        if (!world.CanTell(check) || answers.Check(check, machine, Again(id)) is not { } said || !world.Offers(check, said)) return OptionId.NotSure;
        stopIsThere = world.IsStop(check.Finding, machine);
        return OptionId.State(said);
    }

    private string Prove(string id)
    {
        var repair = world.Repair(id);
        bill.Repair(repair);
        var after = machine.After(repair, Again(id));
        var trial = answers.Try(machine, after, Again("trial"));
        (mended, machine) = (machine.Faults.Except(after.Faults), after);
        return trial switch { TriedOut.Held => OptionId.Held, TriedOut.Better => OptionId.Better, _ => OptionId.NoChange };
    }

    private int Again(string what)
    {
        var time = times.GetValueOrDefault(what);
        times[what] = time + 1;
        return time;
    }

    private sealed record Outcomes(CasePhase Phase, ImmutableArray<string> Named);
}
