using ShedBot.Coaching.Cases;
using Stateless;
using Stateless.Graph;

namespace ShedBot.Coaching.Turns;

/// <summary>What moves a case from one phase to another.</summary>
public enum CaseTrigger
{
    AskTrouble,
    AskMore,
    Rest,
    ShowRepair,
    Prove,
    Hold,
    HandOver,
    Stop,
    Leave,
    ComeBack,
}

/// <summary>The life of a case as a transition table. It has no actions: a turn decides, the table only says what may follow what.</summary>
public static class CaseMachine
{
    /// <returns>The phase after.</returns>
    /// <exception cref="InvalidOperationException">A case in this phase cannot do that.</exception>
    public static CasePhase After(CasePhase phase, CaseTrigger trigger)
    {
        var machine = From(phase);
        machine.Fire(trigger);
        return machine.State;
    }

    public static bool May(CasePhase phase, CaseTrigger trigger) => From(phase).CanFire(trigger);

    /// <summary>The table as a Mermaid state diagram, for the documentation.</summary>
    public static string Draw() => MermaidGraph.Format(From(CasePhase.Opening).GetInfo(), MermaidGraphDirection.TopToBottom);

    private static StateMachine<CasePhase, CaseTrigger> From(CasePhase phase)
    {
        var machine = new StateMachine<CasePhase, CaseTrigger>(phase);
        Open(machine, CasePhase.Opening)
            .PermitReentry(CaseTrigger.AskTrouble);
        Open(machine, CasePhase.Asking)
            .PermitReentry(CaseTrigger.AskMore);
        Open(machine, CasePhase.Resting)
            .PermitReentry(CaseTrigger.Rest);
        Open(machine, CasePhase.Repairing)
            .PermitReentry(CaseTrigger.ShowRepair)
            .Permit(CaseTrigger.Prove, CasePhase.Proving);
        Open(machine, CasePhase.Proving)
            .PermitReentry(CaseTrigger.Prove)
            .Permit(CaseTrigger.Hold, CasePhase.Solved);
        machine.Configure(CasePhase.Solved)
            .Permit(CaseTrigger.ComeBack, CasePhase.Asking);
        return machine;
    }

    private static StateMachine<CasePhase, CaseTrigger>.StateConfiguration Open(
        StateMachine<CasePhase, CaseTrigger> machine, CasePhase phase)
    {
        var state = machine.Configure(phase)
            .Permit(CaseTrigger.HandOver, CasePhase.HandedOver)
            .Permit(CaseTrigger.Stop, CasePhase.Stopped)
            .Permit(CaseTrigger.Leave, CasePhase.Left);
        if (phase != CasePhase.Opening) state.Permit(CaseTrigger.AskTrouble, CasePhase.Opening);
        if (phase != CasePhase.Asking) state.Permit(CaseTrigger.AskMore, CasePhase.Asking);
        if (phase != CasePhase.Resting) state.Permit(CaseTrigger.Rest, CasePhase.Resting);
        if (phase != CasePhase.Repairing) state.Permit(CaseTrigger.ShowRepair, CasePhase.Repairing);
        return state;
    }
}
