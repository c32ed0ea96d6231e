using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>Draws riders from the rules: facts by how often they are met, faults by their chances given the facts, given that there is a complaint.</summary>
public sealed class RiderDraw
{
    /// <summary>So often a rider is drawn anew before it is taken that there are none such.</summary>
    private const int MostDraws = 50_000;

    private readonly KnowledgeBase knowledge;
    private readonly RidersWanted wanted;
    private readonly (string Finding, int State)? shown;
    private readonly ForcedFault? forced;

    public RiderDraw(KnowledgeBase knowledge, RidersWanted wanted)
    {
        (this.knowledge, this.wanted) = (knowledge, wanted);
        if (wanted.With is { } with) forced = ForcedFault.One(knowledge, with);
        if (wanted.Shows?.Split('/') is not [var finding, var state]) return;
        shown = (finding, knowledge.Model.StateAt(knowledge.Model.FindingAt(finding), state));
        forced ??= ForcedFault.Behind(knowledge, finding, shown.Value.State);
    }

    /// <exception cref="NoSuchRiderException">The rules make such a rider too rare to be met.</exception>
    public Rider Draw(int seed, int number)
    {
        for (var draw = 0; draw < MostDraws; draw++)
        {
            if (TryOnce(new Luck(seed, number, draw), number) is { } rider) return rider;
        }

        throw new NoSuchRiderException(
            $"Of {MostDraws} bikes none had {wanted.Fault ?? wanted.With ?? "a fault"} and showed {wanted.Complaint ?? wanted.Shows ?? "a complaint"}.");
    }

    private Rider? TryOnce(Luck luck, int number)
    {
        var facts = knowledge.Facts.Values.ToImmutableSortedDictionary(
            f => f.Id,
            f => f.Values[luck.Pick([.. f.Values.Select(v => ChanceWords.Chance(v.HowOften))], f.Id)].Id,
            StringComparer.Ordinal);
        if (Faults(facts, luck) is not { IsEmpty: false } faults) return null;
        var machine = new Machine(knowledge.Model, faults, luck);
        if (wanted.Complaint is { } only && !machine.Shows(only)) return null;
        if (shown is { } state && machine.StateOf(state.Finding) != state.State) return null;
        ImmutableArray<string> complaints = [.. knowledge.Complaints.Keys.Where(machine.Shows)];
        return complaints.IsEmpty ? null : new Rider(number, luck, facts, machine, complaints);
    }

    private ImmutableSortedSet<string>? Faults(IReadOnlyDictionary<string, string> facts, Luck luck)
    {
        if (wanted.Fault is { } fault) return [fault];
        var model = MachineProfile.ModelFor(knowledge, facts);
        var sure = forced?.Pick(luck);
        if (sure is not null && !forced!.Fits(sure, model, luck)) return null;
        return [.. model.Faults.Where(f => f.Id == sure || luck.Happens(f.Prior, f.Id)).Select(f => f.Id)];
    }
}

/// <summary>What was asked for cannot be drawn from the rules.</summary>
public sealed class NoSuchRiderException(string message) : Exception(message);
