namespace ShedBot.Reasoning.Planning;

/// <summary>The kinds of step, in the order in which ties between them are broken.</summary>
internal enum MoveKind
{
    Check,
    Repair,
    Help,
}

/// <summary>A step by its place in a <see cref="PlanTable"/>.</summary>
internal readonly record struct Move(MoveKind Kind, int Index)
{
    public static readonly Move Help = new(MoveKind.Help, 0);

    public static Move Check(int index) => new(MoveKind.Check, index);

    public static Move Repair(int index) => new(MoveKind.Repair, index);
}

/// <summary>A step with the expected cost of taking it, times the weight.</summary>
internal readonly record struct ScoredMove(Move Move, double Cost);
