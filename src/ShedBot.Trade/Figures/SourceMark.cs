namespace ShedBot.Trade.Figures;

/// <summary>How far a figure or rule can be trusted, told to the rider beside every result.</summary>
public enum SourceMark
{
    /// <summary>A standard, textbook or data page says so; the source is named beside it.</summary>
    Published,

    /// <summary>Follows from geometry or arithmetic alone; as good as the measurements put in.</summary>
    Derived,

    /// <summary>Usual in the trade; no published source.</summary>
    CommonPractice,

    /// <summary>From memory; check before relying on it.</summary>
    FromMemory,
}
