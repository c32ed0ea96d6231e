namespace ShedBot.Reasoning.Modelling;

/// <summary>A way to learn the state of a finding: a question or an inspection.</summary>
/// <param name="Id">A name that is unique among the checks of a model.</param>
/// <param name="Finding">The id of the finding it observes. Several checks may observe the same finding; they then share its true state.</param>
/// <param name="Cost">What it costs to do, the opening of its cover not counted.</param>
/// <param name="Error">How often the answer is wrong.</param>
/// <param name="Cover">The id of the cover it hides behind, or null.</param>
/// <param name="Hazard">How dangerous it is; see <see cref="Modelling.Hazard"/>.</param>
/// <param name="Unsure">P(the answer is 'not sure'), in [0, 1), taken to be the same whatever the fault: such an answer costs time and teaches nothing.</param>
public sealed record Check(
    string Id,
    string Finding,
    StepCost Cost,
    AnswerError Error = default,
    string? Cover = null,
    Hazard Hazard = Hazard.None,
    double Unsure = 0);

/// <summary>How often an answer is wrong.</summary>
/// <remarks>
/// P(said | true): with K abnormal states, a normal truth is called each abnormal state with FalsePositive / K; an abnormal truth is
/// called each of the K other states with FalseNegative / K. For a yes/no finding: P(said yes) = P(yes)(1 - fn) + P(no) fp.
/// </remarks>
/// <param name="FalsePositive">P(said abnormal | truly normal), in [0, 0.5].</param>
/// <param name="FalseNegative">P(said anything but the true state | truly abnormal), in [0, 0.5].</param>
public readonly record struct AnswerError(double FalsePositive, double FalseNegative)
{
    public static AnswerError Even(double rate) => new(rate, rate);
}

/// <summary>How dangerous a step is for the person who does it. A limit on this is a constraint, never traded against minutes.</summary>
public enum Hazard
{
    None = 0,
    Low = 1,
    Medium = 2,
    High = 3,
}
