using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>Draws riders from the rules: facts by how often they are met, faults by their chances given the facts, given that there is a complaint.</summary>
public sealed class RiderDraw(KnowledgeBase knowledge, RidersWanted wanted)
{
    /// <summary>So often a rider is drawn anew before it is taken that there are none such.</summary>
    private const int MostDraws = 50_000;

    /// <exception cref="NoSuchRiderException">The rules make such a rider too rare to be met.</exception>
    public Rider Draw(int seed, int number)
    {
        for (var draw = 0; draw < MostDraws; draw++)
        {
            if (TryOnce(new Luck(seed, number, draw), number) is { } rider) return rider;
        }

        throw new NoSuchRiderException($"Of {MostDraws} bikes none had {wanted.Fault ?? "a fault"} and showed {wanted.Complaint ?? "a complaint"}.");
    }

    private Rider? TryOnce(Luck luck, int number)
    {
        var facts = knowledge.Facts.Values.ToImmutableSortedDictionary(
            f => f.Id,
            f => f.Values[luck.Pick([.. f.Values.Select(v => ChanceWords.Chance(v.HowOften))], f.Id)].Id,
            StringComparer.Ordinal);
        var machine = new Machine(knowledge.Model, Faults(facts, luck), luck);
        if (machine.Faults.IsEmpty || (wanted.Complaint is { } only && !machine.Shows(only))) return null;
        ImmutableArray<string> complaints = [.. knowledge.Complaints.Keys.Where(machine.Shows)];
        return complaints.IsEmpty ? null : new Rider(number, luck, facts, machine, complaints);
    }

    private ImmutableSortedSet<string> Faults(IReadOnlyDictionary<string, string> facts, Luck luck) => wanted.Fault is { } fault
        ? [fault]
        : [.. MachineProfile.ModelFor(knowledge, facts).Faults.Where(f => luck.Happens(f.Prior, f.Id)).Select(f => f.Id)];
}

/// <summary>What was asked for cannot be drawn from the rules.</summary>
public sealed class NoSuchRiderException(string message) : Exception(message);
