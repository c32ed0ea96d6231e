namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>What each kind of rule has to reach to be heard. Tuned on messages written for that, never on those that test it.</summary>
internal static class Hearing
{
    /// <summary>A complaint that stands alone, and a further one beside it.</summary>
    public const double Complaint = 0.5, FurtherComplaint = 0.7, Denial = 0.5, BareDenial = 0.7;

    /// <summary>A volunteered state: a phrase nearly whole, and nothing of it denied.</summary>
    public const double State = 0.75;

    /// <summary>A phrase of an emergency, and a plain trouble that accounts for the same words in its stead.</summary>
    public const double Emergency = 0.7, PlainTrouble = 0.75;

    /// <summary>A complaint in a message that speaks of something else and names no part of the clutch.</summary>
    public const double InOtherCompany = 0.9;

    /// <summary>A question in the form of a question, and one that only its mark tells, and a topic by name.</summary>
    public const double Question = 0.6, MarkedQuestion = 0.8, BareQuestion = 0.97;

    /// <summary>A trouble with a lever that is named outright, and nothing more.</summary>
    public const double Named = 0.6;

    /// <summary>A complaint in the same breath as a question.</summary>
    public const double BesideQuestion = 0.6;
}
