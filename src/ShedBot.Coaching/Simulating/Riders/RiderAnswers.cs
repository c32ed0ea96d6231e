using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>How riders answer beyond what the rules say of each check.</summary>
/// <param name="Wrong">The chance that any answer is replaced by another one, in [0, 1].</param>
/// <param name="Unsure">The chance of 'not sure' to any question; null for what the rules say of each check, and none for facts of the bike.</param>
/// <param name="PicksComplaint">True to pick the complaint from a list, so that nothing is misheard; else it is told in words.</param>
public sealed record Habits(double Wrong = 0, double? Unsure = null, bool PicksComplaint = false);

/// <summary>How a trial after a repair went, as the rider tells it.</summary>
public enum TriedOut
{
    Held,
    Better,
    NoChange,
}

/// <summary>What a rider says.</summary>
public sealed class RiderAnswers(Rider rider, Habits habits)
{
    private Luck Luck => rider.Luck;

    /// <param name="time">Which time the rider is asked this, from 0.</param>
    /// <returns>The id of the state, or null for 'not sure'.</returns>
    public string? Check(Check check, Machine machine, int time)
    {
        if (Luck.Happens(habits.Unsure ?? check.Unsure, $"{check.Id}?unsure", time)) return null;
        var finding = machine.Model.Findings[machine.Model.FindingAt(check.Finding)];
        var truth = machine.StateOf(check.Finding);
        var chances = Enumerable.Range(0, finding.States.Length).Select(s => AnswerChance.Of(check.Error, finding.States.Length, truth, s)).ToList();
        return finding.States[Slip(Luck.Pick(chances, $"{check.Id}?said", time), finding.States.Length, check.Id, time)];
    }

    /// <inheritdoc cref="Check"/>
    public string? Fact(FactRule fact, int time)
    {
        if (Luck.Happens(habits.Unsure ?? 0, $"{fact.Id}?unsure", time)) return null;
        var truth = fact.Values.TakeWhile(v => v.Id != rider.Facts[fact.Id]).Count();
        return fact.Values[Slip(truth, fact.Values.Length, fact.Id, time)].Id;
    }

    /// <param name="time">Which trial of the case this is, from 0.</param>
    public TriedOut Try(Machine before, Machine after, int time)
    {
        var truth = IsOver(after) ? TriedOut.Held : after.Faults.Count < before.Faults.Count ? TriedOut.Better : TriedOut.NoChange;
        return (TriedOut)Slip((int)truth, 3, "trial", time);
    }

    /// <summary>True when nothing of what the rider came with is left, or nothing is wrong any more.</summary>
    public bool IsOver(Machine machine) => machine.Faults.IsEmpty || !rider.Complaints.Any(machine.Shows);

    private int Slip(int meant, int count, string what, int time)
    {
        if (count < 2 || !Luck.Happens(habits.Wrong, $"{what}?slip", time)) return meant;
        var other = Luck.PickOf(count - 1, $"{what}?instead", time);
        return other < meant ? other : other + 1;
    }
}
