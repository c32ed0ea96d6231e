namespace ShedBot.Reasoning.Modelling;

/// <summary>One thing that can be wrong, with its chance of being wrong before anything is known.</summary>
/// <param name="Id">A name that is unique among the faults of a model.</param>
/// <param name="Prior">P(fault), a probability in (0, 1). Faults are independent a priori.</param>
/// <param name="IsOther">True for the one fault that stands for 'something that is not listed'; no repair fixes it.</param>
public sealed record Fault(string Id, double Prior, bool IsOther = false);
