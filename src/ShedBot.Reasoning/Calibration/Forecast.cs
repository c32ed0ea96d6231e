namespace ShedBot.Reasoning.Calibration;

/// <summary>What was said of one event beforehand, and whether it came.</summary>
/// <param name="Probability">In [0, 1].</param>
public readonly record struct Forecast(double Probability, bool Happened)
{
    internal double Outcome => Happened ? 1 : 0;
}
