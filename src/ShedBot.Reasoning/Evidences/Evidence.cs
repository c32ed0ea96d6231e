using System.Collections.Immutable;

namespace ShedBot.Reasoning.Evidences;

/// <summary>One thing learnt, in the order it was learnt. What was not learnt ('not sure', 'can't check') is no evidence and has no record here.</summary>
public abstract record Evidence;

/// <summary>A check was answered. The error rates of the check apply.</summary>
public sealed record CheckAnswered(string Check, string State) : Evidence;

/// <summary>A finding was told without a check, as when the member opens with it.</summary>
/// <param name="Error">How often such a statement is wrong.</param>
public sealed record FindingTold(string Finding, string State, Modelling.AnswerError Error) : Evidence;

/// <summary>Virtual evidence on a finding (Pearl 1988, section 2.2.2): only the ratios of the weights matter.</summary>
/// <remarks>A later <see cref="CheckAnswered"/> or <see cref="FindingTold"/> on the same finding replaces it; it is never multiplied with one.</remarks>
/// <param name="Weights">Aligned with the finding's states; each 0 or more, not all 0.</param>
public sealed record FindingHinted(string Finding, ImmutableArray<double> Weights) : Evidence;

/// <summary>A repair was done and the trouble is not wholly gone.</summary>
/// <remarks>
/// Belief is about the machine as it is now, so this moves it: a set of faults S loses what the repair mended. A failure leaves at least one
/// fault (for one fault alone: w_f becomes w_f * (1 - s_rf)). Findings answered after this are about the machine after the repair.
/// </remarks>
/// <param name="Better">True when the trouble is less but not gone, which speaks for several faults at once.</param>
public sealed record RepairFailed(string Repair, bool Better = false) : Evidence;
