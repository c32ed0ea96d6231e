using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>
/// A bike that follows one set of rules before a coach that follows maybe another. How often answers err, what steps cost and what repairs mend is
/// the word of the bike's own rules; where these are silent, the coach's. What only the coach's rules can see cannot be told on this bike.
/// </summary>
internal sealed class RideWorld(KnowledgeBase truth, KnowledgeBase coached)
{
    public KnowledgeBase Truth => truth;

    /// <summary>True when bike and coach follow the same rules.</summary>
    public bool IsOne => ReferenceEquals(truth, coached);

    public Check Check(string id)
    {
        var asked = coached.Model.Checks[coached.Model.CheckAt(id)];
        return truth.Model.Checks.FirstOrDefault(c => c.Id == id && c.Finding == asked.Finding) ?? asked;
    }

    public Repair Repair(string id) =>
        truth.Model.Repairs.FirstOrDefault(r => r.Id == id) ?? coached.Model.Repairs[coached.Model.RepairAt(id)];

    public bool CanTell(Check check) => truth.Findings.ContainsKey(check.Finding);

    /// <summary>False when what the rider saw is not among the answers that the coach knows.</summary>
    public bool Offers(Check check, string state) => IsOne || coached.Findings[check.Finding].States.Any(s => s.Id == state);

    public bool Knows(FactRule fact, Rider rider) =>
        rider.Facts.TryGetValue(fact.Id, out var value) && (IsOne || fact.Values.Any(v => v.Id == value));

    /// <summary>True when what is truly there means 'stop riding' under either set of rules.</summary>
    public bool IsStop(string finding, Machine machine)
    {
        var state = truth.Findings[finding].States[machine.StateOf(finding)];
        return state.StopRiding is not null
            || (coached.Findings.TryGetValue(finding, out var rule) && rule.States.Any(s => s.Id == state.Id && s.StopRiding is not null));
    }
}
