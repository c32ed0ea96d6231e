namespace ShedBot.Reasoning.Inference;

/// <summary>Puts numbers in order without letting their last digits decide: those are rounding, and another order of the same sums changes them.</summary>
internal static class Ties
{
    private const int Dropped = 13;

    /// <summary>A whole number that is the same for numbers that agree in about twelve digits (but for the rare pair with a border between them), and else stands in their order.</summary>
    /// <param name="value">0 or more.</param>
    public static long Key(double value) => (BitConverter.DoubleToInt64Bits(value) + (1L << (Dropped - 1))) >> Dropped;
}
