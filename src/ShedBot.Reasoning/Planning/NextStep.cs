namespace ShedBot.Reasoning.Planning;

/// <summary>What to do next.</summary>
public abstract record NextStep;

/// <summary>Learn the state of a finding.</summary>
public sealed record DoCheck(string Check) : NextStep;

/// <summary>Do a repair, then try the whole machine.</summary>
public sealed record DoRepair(string Repair) : NextStep;

/// <summary>Hand over to a human. It always ends the case, at the model's help cost.</summary>
public sealed record GetHelp : NextStep;
