namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>What is measured under old and new rules. Stored by name: never rename a member.</summary>
public enum Measure
{
    /// <summary>Share in which the cause that led was the one that was there.</summary>
    RightLead,

    /// <summary>Brier score over all causes: the squares (p - o)^2 of every cause added up, each an event of its own; 0 is best.</summary>
    Brier,

    /// <summary>-ln of the chance given to what was there, with a floor of 0.001 on the chance; 0 is best.</summary>
    Log,

    /// <summary>Expected calibration error of the leading cause, five bins of about equal count; 0 is best.</summary>
    CalibrationError,

    /// <summary>Minutes, money and effort joined, help included where it was needed; in minutes.</summary>
    Cost,

    /// <summary>Questions and checks that were put.</summary>
    Asked,

    /// <summary>Share that was mended with a right cause leading.</summary>
    RightCause,

    /// <summary>Share that was mended.</summary>
    Mended,

    /// <summary>Share that was handed to a human.</summary>
    HandedOver,
}

/// <summary>How a measure is read.</summary>
public static class Measures
{
    public static bool MoreIsBetter(Measure measure) => measure is Measure.RightLead or Measure.RightCause or Measure.Mended;

    /// <summary>True for the measures that a verdict is made of; the others are told beside it.</summary>
    public static bool Counts(Measure measure) => measure is Measure.RightLead or Measure.Brier or Measure.Cost or Measure.RightCause or Measure.Mended;

    /// <summary>A difference smaller than this is none worth having, however sure: with thousands of cases the least breath would be 'better'.</summary>
    /// <remarks>Our own choice; common practice, no source.</remarks>
    public static double LeastWorth(Measure measure) => measure switch
    {
        Measure.RightLead or Measure.RightCause or Measure.Mended or Measure.HandedOver => 0.005,
        Measure.Brier => 0.003,
        Measure.Log => 0.005,
        Measure.CalibrationError => 0.01,
        Measure.Cost => 0.5,
        Measure.Asked => 0.1,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "A new measure needs a least worth."),
    };
}
