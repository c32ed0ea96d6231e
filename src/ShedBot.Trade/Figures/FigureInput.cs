namespace ShedBot.Trade.Figures;

/// <summary>One measurement that went into a <see cref="TradeFigure{T}"/>, and how a rider takes it on their own engine.</summary>
/// <param name="Name">What it is, in a rider's words.</param>
/// <param name="Given">The value used, with its unit.</param>
/// <param name="MeasureYours">How to measure it; kits vary from batch to batch, so no size is ever taken for granted.</param>
public sealed record FigureInput(string Name, string Given, string MeasureYours);
