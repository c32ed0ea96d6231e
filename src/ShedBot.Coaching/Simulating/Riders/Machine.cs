using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>A bike whose faults are known, which no coach ever sees. What it shows is drawn from the links of the model.</summary>
/// <remarks>
/// Each present fault, and the leak, strikes each finding at a moment of its own; the first to strike within the day gives the state, and with none it
/// is normal. That is the finding's law of competing hazards, and it keeps what is seen steady: a repair takes away the strikes of what it mended and
/// leaves all others as they were.
/// </remarks>
/// <param name="Faults">The ids of the faults that are present.</param>
public sealed record Machine(DiagnosticModel Model, ImmutableSortedSet<string> Faults, Luck Luck)
{
    private const string Leak = "leak";

    /// <summary>The index of the true state.</summary>
    public int StateOf(string finding)
    {
        var seen = Model.Findings[Model.FindingAt(finding)];
        var first = Strike(finding, Leak, seen.Leak);
        foreach (var link in seen.Links)
        {
            if (Faults.Contains(link.Fault) && Strike(finding, link.Fault, link.Net) is var next && next.At < first.At) first = next;
        }

        return first.State;
    }

    public bool Shows(string complaint) => StateOf(complaint) > 0;

    /// <summary>The machine after a repair: each fault that the repair can mend is mended with its own chance.</summary>
    /// <param name="time">Which time this repair is done, from 0.</param>
    public Machine After(Repair repair, int time)
    {
        var (luck, fixes) = (Luck, repair.Fixes);
        return this with
        {
            Faults = Faults.Except(Faults.Where(fault => fixes.Any(f => f.Fault == fault && luck.Happens(f.Success, $"{repair.Id}!{fault}", time)))),
        };
    }

    private (double At, int State) Strike(string finding, string cause, ImmutableArray<double> strengths)
    {
        var abnormal = strengths.SetItem(0, 0);
        var (sum, roll) = (abnormal.Sum(), Luck.Roll($"{cause}>{finding}"));
        if (roll >= sum) return (double.PositiveInfinity, 0);
        // A sure cause strikes at once; two of them share by chance, which the tiny part decides.
        var at = sum < 1 ? double.LogP1(-roll) / double.LogP1(-sum) : roll * 1e-12;
        return (at, Luck.Pick(abnormal, $"{cause}>{finding}:state"));
    }
}
