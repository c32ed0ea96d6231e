namespace ShedBot.Trade.Figures;

/// <summary>A result fit to show to a rider: never a bare number, always with what went in and how far to trust it.</summary>
/// <typeparam name="T">The quantity of the result, such as a length or a torque.</typeparam>
/// <param name="Value">The result.</param>
/// <param name="Formula">The formula in one line of plain symbols.</param>
/// <param name="Source">Where formula and constants come from.</param>
/// <param name="Mark">The weakest link among formula and constants; the inputs are the rider's own.</param>
/// <param name="Inputs">Every measurement used, in the order of the formula.</param>
public sealed record TradeFigure<T>(
    T Value, string Formula, string Source, SourceMark Mark, IReadOnlyList<FigureInput> Inputs)
    where T : struct, IQuantity;
