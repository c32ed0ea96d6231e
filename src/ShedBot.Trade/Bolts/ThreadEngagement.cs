using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Bolts;

/// <summary>How a steel thread sits in an aluminium case.</summary>
public enum EngagementVerdict
{
    /// <summary>Under 1.5 diameters: expect it to strip before the bolt is tight.</summary>
    TooShort,

    /// <summary>1.5 to 2 diameters.</summary>
    Enough,

    /// <summary>2 diameters or more.</summary>
    Good,
}

/// <summary>Length of thread that must be in the metal when steel screws into aluminium.</summary>
/// <remarks>Rule: at least 1.5 d, 2 d better [common practice, no source].</remarks>
public static class ThreadEngagement
{
    private const double LeastDiameters = 1.5, GoodDiameters = 2;

    /// <summary>Least length: 1.5 x d.</summary>
    public static TradeFigure<Length> LeastInAluminium(MetricThread thread) =>
        new(
            LeastDiameters * thread.Diameter,
            "1.5 x d",
            "Usual in the trade, no published source",
            SourceMark.CommonPractice,
            [new("Diameter d", Shown.Millimetres(thread.Diameter), "Vernier across the outside of the thread.")]);

    /// <summary>Judges a measured engagement; both bounds belong to the better verdict.</summary>
    /// <param name="engaged">Thread length actually in the metal, 0 or more: screw length less what stands above the case.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    public static EngagementVerdict InAluminium(MetricThread thread, Length engaged) =>
        (Limits.ZeroOrMore(engaged) / thread.Diameter) switch
        {
            < LeastDiameters => EngagementVerdict.TooShort,
            < GoodDiameters => EngagementVerdict.Enough,
            _ => EngagementVerdict.Good,
        };
}
