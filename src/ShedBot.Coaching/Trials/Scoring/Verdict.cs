namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>What a trial says of new rules beside old ones. Stored by name: never rename a member.</summary>
public enum Verdict
{
    /// <summary>None that is both sure and worth having. Too few to tell comes to this as well.</summary>
    NoDifference,

    Better,

    Worse,

    /// <summary>Better in one thing and worse in another.</summary>
    Mixed,
}

/// <summary>Several verdicts as one.</summary>
public static class Verdicts
{
    /// <returns><see cref="Verdict.NoDifference"/> of none at all.</returns>
    public static Verdict Together(IEnumerable<Verdict> parts)
    {
        var (better, worse) = (false, false);
        foreach (var part in parts)
        {
            better |= part is Verdict.Better or Verdict.Mixed;
            worse |= part is Verdict.Worse or Verdict.Mixed;
        }

        return (better, worse) switch
        {
            (true, true) => Verdict.Mixed,
            (true, false) => Verdict.Better,
            (false, true) => Verdict.Worse,
            _ => Verdict.NoDifference,
        };
    }
}
