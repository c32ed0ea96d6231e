namespace ShedBot.Coaching.Learning;

/// <summary>One number of the rules that can be learnt.</summary>
public abstract record LearningTarget
{
    /// <summary>A plain name for it, in the words of <see cref="Knowledge.Compiling.LearntText"/>: the same target always has the same.</summary>
    public abstract string Key { get; }
}

/// <summary>How common a fault is.</summary>
public sealed record OddsTarget(string Fault) : LearningTarget
{
    public override string Key => $"odds {Fault}";
}

/// <summary>How often a fault shows as a state of a finding.</summary>
public sealed record LinkTarget(string Fault, string Finding, string State) : LearningTarget
{
    public override string Key => $"link {Fault} {Finding} {State}";
}

/// <summary>How often a repair mends a fault.</summary>
public sealed record MendTarget(string Repair, string Fault) : LearningTarget
{
    public override string Key => $"mend {Repair} {Fault}";
}
