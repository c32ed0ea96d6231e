namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>One thing that can be picked.</summary>
/// <param name="Value">What is kept: an id, a word of a scale, or <see cref="New"/> or <see cref="None"/>.</param>
/// <param name="Says">What it is called; one line.</param>
/// <param name="Detail">What tells it from its neighbours; empty when nothing is needed. Its words are searched too.</param>
public sealed record Choice(string Value, string Says, string Detail = "")
{
    /// <summary>Something that is not in the list yet.</summary>
    public const string New = "+new";

    /// <summary>Nothing of it.</summary>
    public const string None = "+none";
}
