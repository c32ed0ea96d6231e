namespace ShedBot.Coaching.Riding;

/// <summary>What a day's riding was like, as far as it wears parts. Stored by name: never rename a member.</summary>
public enum Weather
{
    Dry,
    Wet,
    Dusty,
}
