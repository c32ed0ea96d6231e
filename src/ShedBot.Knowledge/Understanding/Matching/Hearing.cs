namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>What each kind of rule has to reach to be heard. Tuned on messages written for that, never on those that test it.</summary>
internal static class Hearing
{
    /// <summary>A complaint that stands alone, and a further one beside it.</summary>
    public const double Complaint = 0.5, Denial = 0.5;

    /// <summary>A volunteered state: so much of a phrase has to be said, and nothing of it denied.</summary>
    public const double StateCovered = 0.72, State = 0.6;

    public const double Emergency = 0.6;

    /// <summary>A question in the form of a question, and one that is not.</summary>
    public const double Question = 0.5, BareQuestion = 0.75;
}
