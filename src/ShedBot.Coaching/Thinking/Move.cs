using ShedBot.Reasoning.Judging;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Coaching.Thinking;

/// <summary>What the coach does next.</summary>
internal abstract record Move;

internal sealed record AskFact(string Fact) : Move;

internal sealed record AskCheck(string Check) : Move;

/// <summary>Puts a check once more, because its answer does not fit the others.</summary>
internal sealed record AskAgain(string Check) : Move;

internal sealed record ShowRepair(string Repair, Decision Decision) : Move;

/// <summary>Asks whether it is safe to put hands on, before the first step that does.</summary>
internal sealed record AskReady : Move;

/// <summary>Nothing more can be learnt or done until the member is at the bike.</summary>
internal sealed record Rest : Move;

/// <param name="Reason">Null when the member asked for a human.</param>
internal sealed record PassOn(HandOverReason? Reason) : Move;
