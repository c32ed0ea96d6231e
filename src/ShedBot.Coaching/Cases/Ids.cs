namespace ShedBot.Coaching.Cases;

/// <summary>A member, as the platform knows them. <c>default</c> is nobody.</summary>
public readonly record struct MemberId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>One case: one trouble of one bike, talked through. Chosen by the shell, never by the core.</summary>
public readonly record struct CaseId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>One bike of one member.</summary>
public readonly record struct BikeId(string Value)
{
    /// <summary>The bike of a member who keeps one.</summary>
    public static BikeId Of(MemberId member) => new(member.Value + "/bike");

    public override string ToString() => Value;
}
